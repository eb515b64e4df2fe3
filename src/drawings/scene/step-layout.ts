import type { Shape } from '../shared/figure-contract.ts'
import { type SceneLayout, sceneLayouts } from './layout.ts'

/** Where a step's picture has, beside the machine and its numbers, the names and the slab that shows where one stands. */
export interface StepLayout extends SceneLayout {
  /** Where the names of the numbers are, in lines; null where they are beside the numbers. */
  readonly names: {
    readonly left: number
    readonly right: number
    readonly top: number
    readonly step: number
  } | null
  /** The middle of the slab, and its size. */
  readonly stand: { readonly x: number; readonly y: number; readonly size: number }
  /** Letters of the flag. */
  readonly letters: number
}

const { wide, narrow } = sceneLayouts.tall

/** The layouts of a step's picture. */
export const stepLayouts: Readonly<Record<Shape, StepLayout>> = {
  wide: {
    ...wide,
    margins: { ...wide.margins, bottom: 540 },
    names: null,
    stand: { x: 952, y: 584, size: 1 },
    letters: 17,
  },
  narrow: {
    ...narrow,
    height: narrow.height + 86,
    names: { left: 4, right: 304, top: narrow.height + 16, step: 21 },
    stand: { x: 330, y: narrow.height + 48, size: 0.8 },
    letters: 14,
  },
}
