import { passEnds, stripOfColumn, type Way, wayOfPass } from './bed.ts'
import type { Condition } from './condition.ts'
import { dimensions } from './dimensions.ts'
import { allColumns, type CardRow, type Column, markOfColumn, measureOfColumn, markOfStrip, measureOfStrip, type Strip } from './indices.ts'
import { at } from './lookup.ts'
import { pinHeight } from './pin.ts'
import { fullShift, outOfPush, rockerOut } from './rocker.ts'
import { stripStates } from './states.ts'
import { fullPush, sweepPast, sweepWindow, wrap } from './sweep.ts'
import { decay, travelIn } from './travel.ts'
import { rowRead } from './turn.ts'

const { columns, strips, preload, sweepHalf, ratio } = dimensions

/** How one column drives its strip during a pass. Distances are in needles of travel past the pin's middle. */
export interface Drive {
  readonly column: Column
  /** Push in mm at the pin's middle. */
  readonly fullPush: number
  /** Whether the pin keeps its push, and whether it brings a push from the pass before. */
  readonly keeps: boolean
  readonly kept: boolean
  /** Where the strip leaves its rocker because the push falls faster than the spring follows, and its shift there. */
  readonly leavesAt: number
  readonly leavesWith: number
}

/** What stays the same throughout a pass. */
export interface PassDrive {
  readonly pass: number
  readonly way: Way
  /** Card row read, from 1; null without a card. */
  readonly row: CardRow | null
  /** Where the carriage starts, in needles. */
  readonly start: number
  /** One for each column, column 1 at index 0. */
  readonly drives: readonly Drive[]
}

/** Travel in needles during one time constant of a strip's return. */
const decayLength = (condition: Condition, strip: Strip): number =>
  travelIn(measureOfStrip(condition.stripReturn, strip), condition.speed)

/**
 * Where a strip leaves its rocker, in needles past the pin's middle; Infinity where the spring always follows.
 * Solves output'(v) = -(output + preload) / constant for the raised cosine of the push: with
 * angle = pi v / sweepHalf that is (pi constant / sweepHalf) sin(angle) - cos(angle) = 1 + (preload - lost) / amplitude.
 */
export const leavingPoint = (amplitude: number, lost: number, constant: number): number => {
  const steepness = (Math.PI * constant) / sweepHalf
  const share = (1 + (preload - lost) / amplitude) / Math.hypot(steepness, 1)
  if (!(amplitude > 0) || share >= 1) return Infinity
  return (Math.max(0, Math.atan2(1, steepness) + Math.asin(Math.max(-1, share))) * sweepHalf) / Math.PI
}

const driveOf = (condition: Condition, column: Column, row: CardRow | null, kept: boolean): Drive => {
  const push = fullPush(condition, pinHeight(condition, row, column))
  const lost = measureOfColumn(condition.lost, column)
  const keeps = markOfColumn(condition.pinOver, column) === 1
  const none = { column, fullPush: push, keeps, kept: keeps && kept, leavesAt: Infinity, leavesWith: 0 }
  if (keeps || rockerOut(condition, column, push) === 0) return none
  const leavesAt = leavingPoint((ratio * push) / 2, lost, decayLength(condition, stripOfColumn(column)))
  return { ...none, leavesAt, leavesWith: rockerOut(condition, column, push * sweepWindow(leavesAt)) }
}

/** Reads the card for a pass and settles how each of its 24 columns will drive its strip. */
export const passDrive = (condition: Condition, pass: number): PassDrive => {
  const row = rowRead(condition, pass)
  const kept = condition.shortTurns.has(pass)
  const drives = allColumns.map((column) => driveOf(condition, column, row, kept))
  return { pass, way: wayOfPass(pass), row, start: passEnds(pass, condition.bed).start, drives }
}

/** How far the carriage has travelled in its pass, in needles; at least 0. */
const travelled = (drive: PassDrive, x: number): number => Math.max(0, drive.way * (x - drive.start))

/** How far, in needles of travel within (-12, 12], the sweep is past the pin of a column. */
const pastInTravel = (condition: Condition, drive: PassDrive, column: Column, x: number): number =>
  wrap(drive.way * sweepPast(condition, column, x, drive.way))

/** Push of a pin in mm with the carriage at `x`, and whether it is one that should have been let go already. */
export const pinPush = (
  condition: Condition,
  drive: PassDrive,
  column: Drive,
  x: number,
): { push: number; kept: boolean } => {
  if (column.fullPush === 0) return { push: 0, kept: false }
  const past = pastInTravel(condition, drive, column.column, x)
  const live = column.fullPush * sweepWindow(past)
  if (!column.keeps) return { push: live, kept: false }
  const travel = travelled(drive, x)
  const metMiddle = column.kept || (past >= 0 ? past : past + columns) <= travel
  const most = metMiddle
    ? column.fullPush
    : Math.max(live, column.fullPush * sweepWindow(wrap(past - travel)))
  return { push: most, kept: most > live }
}

/**
 * Shift in mm that is left after a strip was let go at `shift`. `distance` and the time `constant` of its return are
 * both in needles of travel, or both in ms.
 */
const returning = (shift: number, distance: number, constant: number): number =>
  Math.max(0, (shift + preload) * decay(distance, constant) - preload)

/**
 * Shift in mm that is left of a strip pushed by `push` mm at most, with this lost motion, when the presser lets go of
 * the needle eight further on. `past` is how far the sweep is then past the middle of a pin, in needles of travel,
 * beyond those eight; `constant` is the strip's time constant in needles of travel.
 */
export const shiftEightOn = (push: number, lost: number, constant: number, past = 0): number => {
  const leavesAt = leavingPoint((ratio * push) / 2, lost, constant)
  if (leavesAt >= sweepHalf) return 0
  const shift = outOfPush(push * sweepWindow(leavesAt), lost)
  return shift === 0 ? 0 : returning(shift, strips + past - leavesAt, constant)
}

/** What one column still holds its strip at, by pushing now or by having pushed and let go. */
const held = (condition: Condition, drive: PassDrive, column: Drive, x: number, constant: number): number => {
  if (column.keeps) return rockerOut(condition, column.column, pinPush(condition, drive, column, x).push)
  const past = pastInTravel(condition, drive, column.column, x)
  const now =
    Math.abs(past) < sweepHalf ? rockerOut(condition, column.column, column.fullPush * sweepWindow(past)) : 0
  if (column.leavesWith <= 0) return now
  const travel = travelled(drive, x)
  const since = past >= column.leavesAt ? past - column.leavesAt : past + columns - column.leavesAt
  if (since <= travel) return Math.max(now, returning(column.leavesWith, since, constant))
  const atStart = wrap(past - travel)
  if (atStart <= column.leavesAt) return now
  const first = rockerOut(condition, column.column, column.fullPush * sweepWindow(atStart))
  return Math.max(now, returning(first, travel, constant))
}

/**
 * Shift of a strip in mm with the carriage at `x`. A strip follows its rockers or returns freely; as its return
 * depends only on where it is, its shift is the largest of what each push so far has left.
 */
export const stripShift = (condition: Condition, drive: PassDrive, strip: Strip, x: number): number => {
  const stuck = markOfStrip(condition.stripStuck, strip)
  if (stuck === stripStates.seized) return 0
  // A strip that is stuck shifted stays where a sound rocker pushes it.
  if (stuck === stripStates.over) return fullShift
  const constant = decayLength(condition, strip)
  let most = 0
  for (let index = strip - 1; index < columns; index += strips) {
    const column = at(drive.drives, index)
    if (column.fullPush > 0) most = Math.max(most, held(condition, drive, column, x, constant))
  }
  return most
}
