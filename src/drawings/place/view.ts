import { dimensions } from '../../mechanism/dimensions.ts'
import { partOfFault } from '../../mechanism/fault.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import type { FigureOptions } from '../shared/figure-contract.ts'
import { type Layout, layouts } from './layout.ts'

/** What the figure's pieces need: the state, and which parts are broken. */
export interface View {
  readonly run: Run
  readonly frame: Frame
  readonly layout: Layout
  /** How far the card has still to roll to the row being read, in rows. */
  readonly roll: number
  readonly broken: ReadonlySet<string>
  readonly prefix: string
}

export const viewOf = (run: Run, frame: Frame, options: FigureOptions): View => ({
  run,
  frame,
  layout: layouts[options.shape],
  roll: options.roll ?? 0,
  broken: new Set(run.scenario.faults.map(partOfFault)),
  prefix: options.prefix,
})

export const columnNumbers = Array.from({ length: dimensions.columns }, (_, n) => n + 1)
export const stripNumbers = Array.from({ length: dimensions.strips }, (_, n) => n + 1)

/** “broken” where a part has a fault, else nothing: a mark for the styles. */
export const brokenMark = (view: View, part: string): string => (view.broken.has(part) ? 'broken' : '')
