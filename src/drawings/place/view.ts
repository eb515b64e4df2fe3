import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import type { FigureOptions } from '../shared/figure-contract.ts'
import { drawShape, type Group } from '../shared/svg.ts'
import { type FigureView, viewBase } from '../shared/view.ts'
import { layoutOf, layouts, type PlaceLayout } from './layout.ts'

/** What the figure's pieces need: the state, and which parts are broken. */
export interface PlaceView extends FigureView<PlaceLayout> {
  /** How far the card has still to roll to the row being read, in rows. */
  readonly roll: number
}

export const viewOf = (run: Run, frame: Frame, options: FigureOptions): PlaceView => {
  const base = viewBase(layouts, run, frame, options)
  return { ...base, layout: layoutOf(options.shape, base.whole), roll: options.roll ?? 0 }
}

/** Draws an unseen face, or an unseen wide line, by which a part of thin lines can be pressed. */
export const drawPressArea = (group: Group, path: string, shape: 'face' | 'line' = 'face'): void => {
  drawShape(group, 'path', `hit-${shape}`, { d: path })
}

/** “broken” where a part has a fault, else nothing: a mark for the styles. */
export const brokenMark = (view: PlaceView, part: string): string => (view.broken.has(part) ? 'broken' : '')
