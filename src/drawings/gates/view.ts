import type { Bed, Way } from '../../mechanism/bed.ts'
import { cams, type Dimensions, sortedAfter, gate2Start } from '../../mechanism/dimensions.ts'
import { type Frame, harmonic, sinceLetGo } from '../../mechanism/frame.ts'
import type { Outcome } from '../../mechanism/gate.ts'
import { type Needle, markOfNeedle, ofNeedle } from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import { type Sorting, sortingOf, type Stray, strayNear } from '../../words/figures/gates.ts'
import { holdingOf } from '../shared/detail/needle-state.ts'
import type { FigureOptions } from '../shared/figure-contract.ts'
import { type FigureView, needleSlots, viewBase } from '../shared/view.ts'
import { behindX, type GatesLayout, layouts, reaches } from './layout.ts'

/** What the gates figure's parts need. */
export interface GatesView extends FigureView<GatesLayout> {
  readonly way: Way
  /** What the gates do with butts of ordinary make. */
  readonly sorting: Sorting
  /** A butt that goes a way of its own: let go too early, or slow to spring up; null where none is near. */
  readonly stray: Stray | null
  /** Needles in the picture, each in a place of its own while the bed passes; null where the bed has ended. */
  readonly seen: readonly (Needle | null)[]
  /** Place in the picture of a point so many needles behind the presser's edge. */
  readonly x: (behind: number) => number
}

const seenOf = (layout: GatesLayout, whole: Bed, { x, pass }: Frame): (Needle | null)[] => {
  const { behind, ahead } = reaches(layout)
  const ends = [x - pass.way * behind, x - pass.way * ahead]
  const first = Math.floor(Math.min(...ends))
  return needleSlots(whole, first, Math.ceil(behind - ahead) + 2)
}

export const viewOf = (run: Run, frame: Frame, options: FigureOptions): GatesView => {
  const layout = layouts[options.shape]
  const { way } = frame.pass
  const base = viewBase(layouts, run, frame, options)
  return {
    ...base,
    way,
    sorting: sortingOf(frame),
    stray: strayNear(frame),
    seen: seenOf(layout, base.whole, frame),
    x: (behind) => behindX(layout, way, behind),
  }
}

/** How far a butt of an outcome is forward of the line, in mm, so many needles behind the presser's edge. */
export const travelOf = (dimensions: Dimensions, outcome: Outcome, behind: number): number =>
  outcome === 'selected'
    ? cams.selectedTravel * harmonic((behind - gate2Start(dimensions)) / cams.gate2Length)
    : outcome === 'plain'
      ? -cams.plainTravel * harmonic((behind - dimensions.gateLag) / cams.gate1Length)
      : 0

/** How a butt is marked as it rides along. */
export type ButtMark = 'out' | 'gone' | 'set' | 'ahead' | 'free' | 'held' | 'missed' | 'extra'

/** The mark of needle `index`: what it is on its way to, and whether the card asked for it. */
export const markOf = (frame: Frame, index: Needle): ButtMark => {
  const { condition, pass, before } = frame
  if (index < condition.bed.first || index > condition.bed.last) return 'out'
  if (markOfNeedle(condition.needleGone, index)) return 'gone'
  const holding = holdingOf(frame, index)
  if (holding === 'waiting') return before && ofNeedle(before.came, index) === 'selected' ? 'set' : 'ahead'
  const [came, asked] = [ofNeedle(pass.came, index), ofNeedle(pass.asked, index)]
  if (sinceLetGo(frame.x, index, pass.way) >= condition.dimensions.gateLag) {
    if (came === asked) return came === 'selected' ? 'held' : 'free'
    return came === 'selected' ? 'extra' : 'missed'
  }
  return holding === 'sorted' ? 'held' : holding
}

/** Whether the push that a butt carries is still on its way, so that amber lies under it. */
export const isOnItsWay = (frame: Frame, index: Needle): boolean => {
  const since = sinceLetGo(frame.x, index, frame.pass.way)
  return markOf(frame, index) === 'held' && since >= 0 && since <= sortedAfter(frame.condition.dimensions) + 1
}

/** The hatching of a butt that came out otherwise than asked. */
export const hatchOf = (mark: ButtMark): { hatch?: 'broken' } =>
  mark === 'missed' || mark === 'extra' ? { hatch: 'broken' } : {}
