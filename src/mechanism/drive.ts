import { passEnds, stripOfColumn, type Way, wayOfPass } from './bed.ts'
import type { Condition } from './condition.ts'
import { type Dimensions, dimensions as training } from './dimensions.ts'
import {
  allColumns,
  type CardRow,
  type Column,
  markOfColumn,
  measureOfColumn,
  measureOfStrip,
  slotOf,
  type Strip,
} from './indices.ts'
import { type PinReading, pinHeight } from './pin.ts'
import { normalDraw } from './random.ts'
import { noRelease, type Release, releaseOf } from './release.ts'
import { rockerOut } from './rocker.ts'
import { beforeFirstColumn, fullPush, sweepDistance, sweepEnd, sweepWindow, turnsOf } from './sweep.ts'
import { travelIn } from './travel.ts'
import { pinsRaised, rowRead } from './turn.ts'

const { columns } = training

/** How one column drives its strip during a pass. */
export interface Drive {
  readonly column: Column
  /** Push in mm on the flat of the sweep. */
  readonly fullPush: number
  /** Whether the pin keeps its push, for want of its leaf spring. */
  readonly keeps: boolean
  /** The largest push and rocker's output that such a pin brings from the passes since pins rose, in mm. */
  readonly keptPush: number
  readonly keptOut: number
  /** How the strip comes back after the push of a visit of the sweep; visits are counted by `turnsOf`. */
  readonly release: Releases
}

/** What stays the same throughout a pass. */
export interface PassDrive extends PinReading {
  readonly pass: number
  readonly way: Way
  /** Card row read, from 1; null without a card. */
  readonly row: CardRow | null
  /** Where the carriage starts and ends, in needles. */
  readonly start: number
  readonly end: number
  /** One for each column, column 1 at index 0. */
  readonly drives: readonly Drive[]
}

/** Travel in needles during one time constant of a strip's return. */
export const decayLength = (condition: Condition, strip: Strip): number =>
  travelIn(condition.dimensions, measureOfStrip(condition.stripReturn, strip), condition.speed)

/** What loose pins and rockers lose, in mm, when the sweep comes by the pin of a column in a pass; never below 0. */
const rattle = (condition: Condition, column: Column, visit: number, pass: number): number => {
  const needle = beforeFirstColumn(condition) + column + columns * visit
  const under = slotOf(needle, condition.dimensions.needles)
  return condition.pivotsLoose * Math.max(0, normalDraw(condition.seed, 'pivots', under + columns, pass))
}

/** The release of each visit of the sweep. */
type Releases = (visit: number) => Release

const never = noRelease(0)
const noReleases: Releases = () => never

/** Gives releases that are the same at each visit. Columns with the same push, one after another, share one. */
const sameReleases = (
  dimensions: Dimensions,
): ((push: number, lost: number, constant: number) => Releases) => {
  let last = { push: 0, lost: 0, constant: 0, releases: noReleases }
  return (push, lost, constant) => {
    if (last.push !== push || last.lost !== lost || last.constant !== constant) {
      const each = releaseOf(dimensions, push, lost, constant)
      last = { push, lost, constant, releases: () => each }
    }
    return last.releases
  }
}

/** What a pass has in common for all its columns. */
interface Beginning {
  readonly condition: Condition
  readonly pass: number
  readonly reading: PinReading
  readonly same: ReturnType<typeof sameReleases>
}

/** The release of each visit of the sweep to a column in a pass: of all alike, but with loose pivots one for each. */
const releasesOf = ({ condition, pass, same }: Beginning, column: Column, push: number): Releases => {
  if (push === 0 || markOfColumn(condition.rockerDead, column) === 1) return noReleases
  const constant = decayLength(condition, stripOfColumn(column))
  const lost = measureOfColumn(condition.lost, column)
  if (condition.pivotsLoose === 0) return same(push, lost, constant)
  const known = new Map<number, Release>()
  return (visit) => {
    const found = known.get(visit)
    if (found) return found
    const release = releaseOf(
      condition.dimensions,
      push,
      lost + rattle(condition, column, visit, pass),
      constant,
    )
    known.set(visit, release)
    return release
  }
}

/** A visit of the sweep to a pin during a pass, seen from one place of the carriage. */
export interface Visit {
  /** How far the sweep's middle is past the pin, in needles of travel; the visits before this one are 24 further. */
  readonly past: number
  /** The visit's number by `turnsOf`. */
  readonly number: number
}

/** The visit to a column's pin that is nearest with the carriage at `x`; `past` is then in [-12, 12]. */
export const visitAt = (condition: Condition, way: Way, column: Column, x: number): Visit => {
  const distance = sweepDistance(condition, column, x, way)
  const number = turnsOf(distance)
  return { past: way * (distance - columns * number), number }
}

/** How far the carriage has travelled in its pass, in needles; at least 0. */
export const travelled = (drive: PassDrive, x: number): number => Math.max(0, drive.way * (x - drive.start))

/** Share of the full throw that a visit has given at most, with the carriage so far in its pass. */
const peakOf = (dimensions: Dimensions, past: number, travel: number): number =>
  past >= -dimensions.sweepFlat && past - travel <= dimensions.sweepFlat
    ? 1
    : Math.max(sweepWindow(dimensions, past), sweepWindow(dimensions, past - travel))

interface Kept {
  readonly push: number
  readonly out: number
}

/** The most that the pin of a column has been pushed, and its rocker has given, in a pass up to `x` and before it. */
const keptUpTo = (condition: Condition, drive: PassDrive, column: Drive, x: number): Kept => {
  const travel = travelled(drive, x)
  let { keptPush: push, keptOut: out } = column
  let { past, number } = visitAt(condition, drive.way, column.column, x)
  const end = sweepEnd(condition.dimensions)
  for (; past - travel < end; past += columns, number -= drive.way) {
    const reached = column.fullPush * peakOf(condition.dimensions, past, travel)
    push = Math.max(push, reached)
    out = Math.max(out, rockerOut(condition, column.column, reached, column.release(number).lost))
  }
  return { push, out }
}

const beginningOf = (condition: Condition, pass: number, reading: PinReading): Beginning => ({
  condition,
  pass,
  reading,
  same: sameReleases(condition.dimensions),
})

/** A pass without its drives: which way, from where to where, by which row. */
const courseOf = ({ condition, pass, reading }: Beginning): PassDrive => {
  const { start, end } = passEnds(pass, condition.bed)
  const { row, raised } = reading
  return { pass, way: wayOfPass(pass), row, raised, start, end, drives: [] }
}

/** What a pin without its leaf spring has kept from the passes since pins rose last. */
const keptBefore = (beginning: Beginning, drive: Drive): Kept => {
  const { condition, pass, reading } = beginning
  let kept: Kept = { push: 0, out: 0 }
  for (let before = reading.raised; before < pass; before++) {
    const earlier = beginningOf(condition, before, reading)
    const release = releasesOf(earlier, drive.column, drive.fullPush)
    const own = { ...drive, release, keptPush: kept.push, keptOut: kept.out }
    const course = courseOf(earlier)
    kept = keptUpTo(condition, course, own, course.end)
  }
  return kept
}

const driveOf = (beginning: Beginning, column: Column): Drive => {
  const { condition, reading } = beginning
  const push = fullPush(condition, pinHeight(condition, reading, column))
  const drive: Drive = {
    column,
    fullPush: push,
    keeps: markOfColumn(condition.pinOver, column) === 1,
    keptPush: 0,
    keptOut: 0,
    release: releasesOf(beginning, column, push),
  }
  if (!drive.keeps || push === 0) return drive
  const kept = keptBefore(beginning, drive)
  return { ...drive, keptPush: kept.push, keptOut: kept.out }
}

/** Reads the card for a pass and settles how each of its 24 columns will drive its strip. */
export const passDrive = (condition: Condition, pass: number): PassDrive => {
  const reading = { row: rowRead(condition, pass), raised: pinsRaised(condition, pass) }
  const beginning = beginningOf(condition, pass, reading)
  return { ...courseOf(beginning), drives: allColumns.map((column) => driveOf(beginning, column)) }
}

/** Push of a pin to the left in mm with the carriage at `x`, and whether it should have been let go already. */
export const pinPush = (
  condition: Condition,
  drive: PassDrive,
  column: Drive,
  x: number,
): { push: number; kept: boolean } => {
  if (column.fullPush === 0) return { push: 0, kept: false }
  const { past } = visitAt(condition, drive.way, column.column, x)
  const live = column.fullPush * sweepWindow(condition.dimensions, past)
  if (!column.keeps) return { push: live, kept: false }
  const { push } = keptUpTo(condition, drive, column, x)
  return { push, kept: push > live }
}

/** What the rocker of a column gives to its strip with the carriage at `x`, in mm. */
export const rockerOutAt = (condition: Condition, drive: PassDrive, column: Drive, x: number): number => {
  if (column.fullPush === 0) return 0
  if (column.keeps) return keptUpTo(condition, drive, column, x).out
  const { past, number } = visitAt(condition, drive.way, column.column, x)
  const push = column.fullPush * sweepWindow(condition.dimensions, past)
  return rockerOut(condition, column.column, push, column.release(number).lost)
}
