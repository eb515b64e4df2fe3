import type { Condition } from './condition.ts'
import { type Dimensions, dimensions as training } from './dimensions.ts'
import { markOfStrip, type Needle, type Strip } from './indices.ts'
import { at } from './lookup.ts'
import { decayLength, type Drive, type PassDrive, rockerOutAt, travelled, visitAt } from './drive.ts'
import { holdingOn, type Release, returning } from './release.ts'
import { fullShift, outOfPush } from './rocker.ts'
import { stripStates } from './states.ts'
import { sweepDistance, sweepEnd, sweepWindow, turnsOf } from './sweep.ts'

const { columns, strips } = training

/** What one push has left of a strip's shift, in mm, `past` needles after its middle and `travel` needles into the pass. */
const leftOf = (
  dimensions: Dimensions,
  release: Release,
  past: number,
  travel: number,
  constant: number,
): number => {
  const pushed = (at: number): number =>
    outOfPush(dimensions, release.push * sweepWindow(dimensions, at), release.lost)
  const now = Math.abs(past) < sweepEnd(dimensions) ? pushed(past) : 0
  if (release.leavesWith === 0 || past < release.leavesAt) return now
  const since = past - release.leavesAt
  if (since <= travel) return Math.max(now, returning(dimensions, release.leavesWith, since, constant))
  // The pass began while the sweep was leaving this pin: from there on the strip returns.
  return Math.max(now, returning(dimensions, pushed(past - travel), travel, constant))
}

/**
 * Whether no visit before the one to which this belongs can have left more of a strip's shift: each leaves the same,
 * unless loose pivots lose more of one push than of another.
 */
const isLast = (condition: Condition, release: Release, past: number): boolean =>
  condition.pivotsLoose === 0 && past >= Math.min(release.leavesAt, sweepEnd(condition.dimensions))

/** What one column still holds its strip at, by pushing now or by having pushed and let go. */
const heldBy = (
  condition: Condition,
  drive: PassDrive,
  column: Drive,
  x: number,
  constant: number,
): number => {
  if (column.keeps) return rockerOutAt(condition, drive, column, x)
  const travel = travelled(drive, x)
  const distance = sweepDistance(condition, column.column, x, drive.way)
  let most = 0
  let number = turnsOf(distance)
  let past = drive.way * (distance - columns * number)
  const end = sweepEnd(condition.dimensions)
  for (; past - travel < end; past += columns, number -= drive.way) {
    const release = column.release(number)
    if (past < release.restsAt)
      most = Math.max(most, leftOf(condition.dimensions, release, past, travel, constant))
    if (isLast(condition, release, past)) break
  }
  return most
}

/**
 * Shift of a strip in mm with the carriage at `x`. A strip follows its rockers or returns freely; as its return
 * depends only on where it is, its shift is the largest of what each push so far has left.
 */
export const stripShift = (condition: Condition, drive: PassDrive, strip: Strip, x: number): number => {
  const stuck = markOfStrip(condition.stripStuck, strip)
  if (stuck === stripStates.seized) return 0
  // A strip that is stuck shifted stays where a sound rocker pushes it.
  if (stuck === stripStates.over) return fullShift(condition.dimensions)
  const constant = decayLength(condition, strip)
  let most = 0
  for (let index = strip - 1; index < columns; index += strips) {
    const column = at(drive.drives, index)
    if (column.fullPush > 0) most = Math.max(most, heldBy(condition, drive, column, x, constant))
  }
  return most
}

/** From where to where, in needles of travel from now on, something holds a strip at the catches' letting go or above. */
interface Hold {
  readonly from: number
  readonly to: number
}

/** How long one push holds a strip, `past` needles after its middle and `travel` needles into the pass. */
const holdOf = (
  dimensions: Dimensions,
  release: Release,
  past: number,
  travel: number,
  constant: number,
): Hold => {
  const from = release.holdsFrom - past
  const start = past - travel
  if (start <= release.leavesAt) return { from, to: release.holdsTo - past }
  const first = outOfPush(dimensions, release.push * sweepWindow(dimensions, start), release.lost)
  return { from, to: start + holdingOn(dimensions, first, constant) - past }
}

/** How long the push of a pin that keeps it holds a strip: for good, once the sweep has brought it that far. */
const keptHold = (release: Release, past: number, travel: number): Hold | null =>
  past - travel > -release.holdsFrom ? null : { from: release.holdsFrom - past, to: Infinity }

/** Whether a visit of the sweep, `past` needles after its middle, is still to come and holds its strip before the first gate. */
const isToCome = ({ dimensions }: Condition, column: Drive, past: number, visit: number): boolean =>
  column.release(visit).holdsFrom - past <= dimensions.gateLag

/** How long each push of a column so far, and the one under way, holds its strip, seen from the carriage at `x`. */
const holdsBy = (
  condition: Condition,
  drive: PassDrive,
  column: Drive,
  x: number,
  constant: number,
): Hold[] => {
  const holds: Hold[] = []
  if (column.keeps && column.keptOut >= condition.dimensions.letGo) holds.push({ from: 0, to: Infinity })
  const travel = travelled(drive, x)
  const end = sweepEnd(condition.dimensions)
  let { past, number } = visitAt(condition, drive.way, column.column, x)
  if (isToCome(condition, column, past - columns, number + drive.way)) {
    past -= columns
    number += drive.way
  }
  for (; past - travel < end; past += columns, number -= drive.way) {
    const release = column.release(number)
    const hold = column.keeps
      ? keptHold(release, past, travel)
      : holdOf(condition.dimensions, release, past, travel, constant)
    if (hold) holds.push(hold)
    if (isLast(condition, release, past)) break
  }
  return holds
}

/** Whether the push that a column is giving at `x` holds its strip up to the first gate, whatever else does. */
const holdsToGate = (condition: Condition, drive: PassDrive, column: Drive, x: number): boolean => {
  if (column.keeps || column.fullPush === 0) return false
  const distance = sweepDistance(condition, column.column, x, drive.way)
  const number = turnsOf(distance)
  const past = drive.way * (distance - columns * number)
  const { leavesAt, holdsFrom, holdsTo } = column.release(number)
  return (
    past >= holdsFrom &&
    past + condition.dimensions.gateLag <= holdsTo &&
    past - travelled(drive, x) <= leavesAt
  )
}

/**
 * How far the carriage travels, in needles from where the presser lets go of a needle, until its strip falls below the
 * shift at which a catch lets its butt go; Infinity where that is not before the first gate. The needle's strip must be
 * shifted by at least that much when the presser lets go of it.
 */
export const holdsFor = (condition: Condition, drive: PassDrive, strip: Strip, needle: Needle): number => {
  if (markOfStrip(condition.stripStuck, strip) === stripStates.over) return Infinity
  for (let index = strip - 1; index < columns; index += strips)
    if (holdsToGate(condition, drive, at(drive.drives, index), needle)) return Infinity
  const constant = decayLength(condition, strip)
  const holds: Hold[] = []
  for (let index = strip - 1; index < columns; index += strips) {
    const column = at(drive.drives, index)
    if (column.fullPush > 0) holds.push(...holdsBy(condition, drive, column, needle, constant))
  }
  let end = 0
  for (let next = longerHold(holds, end); next; next = longerHold(holds, end)) end = next.to
  return end >= condition.dimensions.gateLag ? Infinity : end
}

/** A hold that is under way when another ends, and ends later itself. */
const longerHold = (holds: readonly Hold[], end: number): Hold | undefined =>
  holds.find(({ from, to }) => from <= end && to > end)
