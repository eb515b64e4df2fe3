import { dimensions } from '../../mechanism/dimensions.ts'
import { partOfFault } from '../../mechanism/fault.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import type { FigureOptions } from '../shared/figure-contract.ts'
import { type Layout, layouts, windowFrom } from './layout.ts'
import { type Group, drawGroup } from '../shared/svg.ts'
import { px } from '../shared/paths.ts'

/** What the figure's bands need: the frame, where the window is, and which parts are broken. */
export interface View {
  readonly run: Run
  readonly frame: Frame
  readonly layout: Layout
  /** First needle of the window, with a fraction. */
  readonly from: number
  /** How far the card has still to roll to the row being read, in rows. */
  readonly roll: number
  /** Ids of the parts with a fault. */
  readonly broken: ReadonlySet<string>
  /** Makes the ids of patterns and clips unique on a page. */
  readonly prefix: string
}

export const viewOf = (run: Run, frame: Frame, options: FigureOptions): View => {
  const layout = layouts[options.shape]
  return {
    run,
    frame,
    layout,
    from: options.from ?? windowFrom(layout, frame.x, frame.pass.way),
    roll: options.roll ?? 0,
    broken: new Set(run.scenario.faults.map(partOfFault)),
    prefix: options.prefix,
  }
}

/**
 * A group that slides with the bed as the window moves. What stands in it by `bedX` keeps its place there: only the group
 * is moved, and not some hundreds of parts.
 */
export const slidingWithBed = (parent: Group, name: string, { layout, from }: View): Group => {
  const group = drawGroup(parent, name, { transform: `translate(${px(-from * layout.pitch)} 0)` })
  return group
}

/** Column numbers 1 to 24, and strip numbers 1 to 8. */
export const columnNumbers = Array.from({ length: dimensions.columns }, (_, n) => n + 1)
export const stripNumbers = Array.from({ length: dimensions.strips }, (_, n) => n + 1)

/**
 * Needles in the window, one in each slot: a needle keeps its slot while the window moves, so that only the slots at
 * the edges are drawn anew. A slot that lies past an end of the bed holds null.
 */
export const slots = (view: View): (number | null)[] => {
  const count = view.layout.needles + 2
  const first = Math.floor(view.from) - 1
  return Array.from({ length: count }, (_, slot) => {
    const index = first + ((((slot - first) % count) + count) % count)
    return index >= 0 && index < dimensions.needles ? index : null
  })
}

/** The same needles from the left, without the slots that hold none. */
export const needlesInWindow = ({ from, layout }: View): number[] => {
  const first = Math.max(0, Math.floor(from) - 1)
  const last = Math.min(dimensions.needles - 1, Math.floor(from) + layout.needles)
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, n) => first + n)
}
