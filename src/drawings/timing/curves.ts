import { type CardPlace, modulo, stripOfColumn } from '../../mechanism/bed.ts'
import type { Condition } from '../../mechanism/condition.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { type Column, measureOfColumn, type Strip, toColumn } from '../../mechanism/indices.ts'
import type { Drive, PassDrive } from '../../mechanism/drive.ts'
import { constantsHome } from '../../mechanism/release.ts'
import { stripShift } from '../../mechanism/strip.ts'
import { beforeFirstColumn, beltError, leadOf, sweepEnd, windowOfShare } from '../../mechanism/sweep.ts'

const { columns } = dimensions

/** A machine in one pass: what the model needs to say how far a strip is shifted at any place of the carriage. */
export interface Machine {
  readonly condition: Condition
  readonly drive: PassDrive
}

/** A stretch of the bed, in needles. */
export interface Range {
  readonly low: number
  readonly high: number
}

/** A value of the model in mm with the carriage at `x` needles. */
export interface Sample {
  readonly x: number
  readonly mm: number
}

/**
 * The column of the card that a whole place of the bed, in needles, belongs to. The chart repeats the card past the
 * bed's ends too, where there are no needles.
 */
export const columnAt = (place: number, { columnOne }: CardPlace): Column =>
  toColumn(modulo(place - columnOne, columns) + 1)

/** Place of the carriage, in needles, at which the middle of the sweep is at a column's pin: one of every 24. */
export const meetingPlace = ({ condition, drive }: Machine, column: Column): number =>
  beforeFirstColumn(condition) +
  column +
  drive.way * leadOf(condition.dimensions) -
  beltError(condition, drive.way)

/** All the places between `low` and `high` at which the sweep meets a column's pin. */
export const meetings = (machine: Machine, column: Column, { low, high }: Range): number[] => {
  const first = low + modulo(meetingPlace(machine, column) - low, columns)
  const count = Math.max(0, Math.floor((high - first) / columns) + 1)
  return Array.from({ length: count }, (_, n) => first + n * columns)
}

/** Travel in needles in which a strip let go at its full shift is back at rest. */
const returnLength = ({ condition }: Machine, strip: Strip, shift: number): number =>
  ((condition.stripReturn[strip - 1] ?? condition.dimensions.stripReturn) *
    condition.speed *
    constantsHome(condition.dimensions, shift)) /
  (1000 * condition.dimensions.pitch)

/** Steps of a push on each ramp of the wedge, and of a slow return, in needles of travel. */
const pushSteps = 8
const returnStep = 1

/** Where, in needles of travel past the pin's middle, the curve of one push wants its points. */
const offsets = (machine: Machine, drive: Drive): number[] => {
  const { dimensions } = machine.condition
  const end = sweepEnd(dimensions)
  const ramp = Array.from({ length: pushSteps + 1 }, (_, n) => end - (n * dimensions.sweepRamp) / pushSteps)
  const all = ramp.flatMap((past) => [-past, past])
  const lost = measureOfColumn(machine.condition.lost, drive.column)
  const { leavesAt, leavesWith } = drive.release(0)
  const begins = windowOfShare(dimensions, lost / (dimensions.ratio * drive.fullPush))
  all.push(-begins, begins)
  if (leavesWith <= 0) return all
  const back = leavesAt + returnLength(machine, stripOfColumn(drive.column), leavesWith)
  all.push(leavesAt, back)
  for (let past = Math.max(end, leavesAt); past < Math.min(back, columns); past += returnStep) all.push(past)
  return all
}

/** Places in a stretch where a strip's curve wants its points. */
export const pointsOf = (machine: Machine, strip: Strip, range: Range): number[] => {
  const { drive } = machine
  const points = [range.low, range.high]
  for (const column of drive.drives) {
    if (stripOfColumn(column.column) !== strip || column.fullPush <= 0) continue
    const around = { low: range.low - columns, high: range.high + columns }
    const bends = offsets(machine, column)
    for (const place of meetings(machine, column.column, around))
      for (const past of bends) {
        const x = place + drive.way * past
        if (x > range.low && x < range.high) points.push(x)
      }
  }
  return points
}

const closest = 1e-6

/** The shift of a strip at these places of the carriage, from the left, as far as they lie in the stretch. */
export const shiftsAt = (
  machine: Machine,
  strip: Strip,
  points: readonly number[],
  range: Range,
): Sample[] => {
  const samples: Sample[] = []
  let last = -Infinity
  for (const x of Float64Array.from(points).sort()) {
    if (x < range.low || x > range.high || x - last < closest) continue
    samples.push({ x, mm: stripShift(machine.condition, machine.drive, strip, x) })
    last = x
  }
  return samples
}

/** The curve's pieces that are off its base line, each with the points on that line at which it begins and ends. */
export const risings = (samples: readonly Sample[]): Sample[][] => {
  const pieces: Sample[][] = []
  let piece: Sample[] = []
  samples.forEach((sample, n) => {
    const before = samples[n - 1]
    if (sample.mm <= 0 && piece.length === 0) return
    if (piece.length === 0 && before) piece.push(before)
    piece.push(sample)
    if (sample.mm > 0) return
    pieces.push(piece)
    piece = []
  })
  return piece.length > 0 ? [...pieces, piece] : pieces
}
