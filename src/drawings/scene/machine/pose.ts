import { stripOfNeedle } from '../../../mechanism/bed.ts'
import type { Condition } from '../../../mechanism/condition.ts'
import type { Frame } from '../../../mechanism/frame.ts'
import {
  allColumns,
  type CardRow,
  type Column,
  markOfColumn,
  measureOfColumn,
  measureOfStrip,
  type Needle,
  type Strip,
  toCardRow,
  toColumn,
} from '../../../mechanism/indices.ts'
import { modulo } from '../../../mechanism/bed.ts'
import { holeNow } from '../../../mechanism/pin.ts'
import { holeKey } from '../../../mechanism/states.ts'
import type { Run } from '../../../mechanism/pass.ts'
import { type PartId, partId } from '../../../mechanism/part.ts'
import { isHoleFault, partOfFault } from '../../../mechanism/fault.ts'
import { drawnDown } from '../../shared/turn.ts'
import type { Mood } from './part.ts'

/** Where every part of the drawn machine is: a frame of the model, and what is broken. */
export interface Pose {
  readonly frame: Frame
  readonly condition: Condition
  readonly broken: ReadonlySet<PartId>
}

/** The pose of a run's frame. */
export const poseOf = (run: Run, frame: Frame): Pose => ({
  frame,
  condition: frame.condition,
  // A hole that is wrong is marked itself, not the whole card.
  broken: new Set(run.scenario.faults.filter((fault) => !isHoleFault(fault)).map(partOfFault)),
})

/** Whether a column's rocker gives something now: what it moves is drawn as moved by a hole. */
export const isColumnMoved = ({ frame }: Pose, column: Column): boolean =>
  measureOfColumn(frame.pinLeans, column) > 0.05 && measureOfColumn(frame.rockerOuts, column) > 0

/** Whether a strip is pushed far enough to be drawn as moved. */
export const isStripMoved = ({ frame }: Pose, strip: Strip): boolean =>
  measureOfStrip(frame.stripShifts, strip) > 0.15

/** How a part is seen that is `moved` or not. */
export const moodOf = ({ broken }: Pose, part: PartId, moved: boolean): Mood =>
  broken.has(part) ? 'broken' : moved ? 'moved' : 'plain'

/** How a pin is seen. */
export const pinMood = (pose: Pose, column: Column): Mood =>
  moodOf(pose, partId({ kind: 'pin', column }), isColumnMoved(pose, column))

/** The strip that a needle's catch belongs to. */
export const stripOf = ({ condition }: Pose, needle: Needle): Strip => stripOfNeedle(needle, condition)

/** What the card has for a column in the row so many rows after the one being read: torn and blocked holes are wrong. */
export const holeAt = (
  { condition, frame }: Pose,
  later: number,
  column: Column,
): 'hole' | 'torn' | 'blocked' | null => {
  const { row } = frame.pass
  if (row === null || !condition.card) return null
  const rows = condition.card.length
  const there: CardRow = toCardRow(modulo(row + later - 1, rows) + 1, rows)
  const own = condition.cardReversed ? toColumn(allColumns.length + 1 - column) : column
  const isOpen = holeNow(condition, there, column)
  if (condition.holes.has(holeKey(there, own))) return isOpen ? 'torn' : 'blocked'
  return isOpen ? 'hole' : null
}

/** Whether a pin has lost its leaf spring. */
export const hasLeaf = ({ condition }: Pose, column: Column): boolean =>
  markOfColumn(condition.pinOver, column) === 0

/** How far to the side its guides let the card lie, in mm, and how far askew, in mm a column. */
const [mostAside, mostAskew] = [1.35, 0.2]

/** How the card lies: to the side in mm, and askew in mm a column, as far as its guides let it. */
export const cardLies = ({ condition }: Pose): { aside: number; askew: number } => ({
  aside: Math.max(-mostAside, Math.min(mostAside, condition.cardSide)),
  askew: Math.max(-mostAskew, Math.min(mostAskew, condition.cardSkew)),
})

/** The same machine with every part at one end of its way or the other, by the bits of `corner`, 0 to 7. */
export const extremePose = ({ frame, condition }: Pose, corner: number): Pose => {
  const [first, second, third] = [1, 2, 4].map((bit) => (corner & bit) > 0) as [boolean, boolean, boolean]
  const { needles, strips, pinHigh, sweepThrow, ratio, lost } = condition.dimensions
  const all = (count: number, value: number): Float64Array => new Float64Array(count).fill(value)
  const { length } = allColumns
  return {
    condition,
    broken: new Set(),
    frame: {
      ...frame,
      x: third ? 140 : 83,
      cardRoll: corner / 8,
      sweepAt: third ? 24.5 : 0.5,
      pinHeights: all(length, first ? pinHigh : drawnDown),
      ...(first ? {} : { drawBar: drawnDown }),
      pinLeans: all(length, second ? sweepThrow : 0),
      rockerOuts: all(length, second ? ratio * sweepThrow - lost : 0),
      stripShifts: all(strips, second ? ratio * sweepThrow - lost : 0),
      buttHeights: all(needles, first ? 0 : -1.6),
      needleTravels: all(needles, third ? 6.5 : -3),
    },
  }
}
