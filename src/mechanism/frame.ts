import { modulo, needlesIn, type Way } from './bed.ts'
import type { Condition } from './condition.ts'
import { cams, type Dimensions, dimensions as training, gate2Start, sortedAfter } from './dimensions.ts'
import { pinPush, rockerOutAt } from './drive.ts'
import { buttReturnOf, freeHeight, heldHeight, letGoHeight, type Outcome, travelTime } from './gate.ts'
import { dipOf } from './hold.ts'
import {
  allStrips,
  type Column,
  isNeedle,
  type Needle,
  ofNeedle,
  markOfNeedle,
  measureOfNeedle,
  slotOf,
  toColumn,
} from './indices.ts'
import type { Pass, Run } from './pass.ts'
import { pinHeight } from './pin.ts'
import type { Departure } from './reason.ts'
import { stripShift } from './strip.ts'
import { beforeFirstColumn, leadOf, sweepX, wrap } from './sweep.ts'
import { decay } from './travel.ts'

/** Where every part is with the carriage at `x`. Lengths in mm; lists have one entry for each part. */
export interface Frame {
  readonly x: number
  readonly pass: Pass
  /** The pass before, whose needles are still set out ahead of the carriage; null in pass 1. */
  readonly before: Pass | null
  readonly condition: Condition
  /** Column, 1 to 24, whose pin the sweep pushes for the needle that is under the presser now. */
  readonly column: Column
  /** Where the sweep's middle is, in columns: 1 over the first pin, at most 24.5. */
  readonly sweepAt: number
  readonly pinHeights: Float64Array
  /** How high the draw bar lets the pins rise, while a turn is drawn beat by beat; left out where it is up. */
  readonly drawBar?: number
  /** How many rows the card has still to go on, while a turn is drawn beat by beat; left out where it lies still. */
  readonly cardRoll?: number
  /** How far each pin's front leg is pushed to the left. */
  readonly pinLeans: Float64Array
  readonly rockerOuts: Float64Array
  readonly stripShifts: Float64Array
  /** Height of each needle's butt above the rest level; negative where it is pressed or held down. */
  readonly buttHeights: Float64Array
  /** How far each needle is from the line: forward positive. */
  readonly needleTravels: Float64Array
  /** Departures that have shown by now: the needle has reached its gate. */
  readonly departures: readonly Departure[]
}

/** Simple harmonic rise from 0 to 1 over `share` 0 to 1, level outside. */
export const harmonic = (share: number): number =>
  share <= 0 ? 0 : share >= 1 ? 1 : (1 - Math.cos(Math.PI * share)) / 2

/** How many needles of travel ago the presser let go of a needle; negative while it has not yet. */
export const sinceLetGo = (x: number, needle: Needle, way: Way): number => way * (x - needle)

/** Whether a catch took the butt of a needle in a pass and still holds it, `since` needles after the presser let go. */
export const isKept = (pass: Pass, needle: Needle, since: number): boolean => {
  const keptFor = measureOfNeedle(pass.keptFor, needle)
  return keptFor > 0 && since <= keptFor
}

/** How deep the presser has dipped a butt, in mm, before it lets go of it in `-since` needles of travel. */
const pressed = (dip: number, since: number): number =>
  dip * harmonic((since + cams.presserFlat + cams.presserRamp) / cams.presserRamp)

/** Height of a butt that a catch keeps: it comes up from the presser's dip as far as the catch lets it. */
const keptHeight = (
  condition: Condition,
  needle: Needle,
  way: Way,
  since: number,
  buttReturn: number,
): number =>
  Math.min(
    heldHeight(condition, needle),
    freeHeight(condition, needle, way, travelTime(condition, since), buttReturn),
  )

const buttHeight = (condition: Condition, pass: Pass, needle: Needle, since: number): number => {
  const rest = measureOfNeedle(condition.buttError, needle)
  if (condition.carriagePlain) return rest
  if (since <= 0) return rest - pressed(dipOf(condition, needle, pass.way), since)
  const buttReturn = buttReturnOf(condition, needle, pass.pass)
  const keptFor = measureOfNeedle(pass.keptFor, needle)
  const passesUnder = ofNeedle(pass.came, needle) === 'selected'
  const free = (distance: number): number =>
    freeHeight(condition, needle, pass.way, travelTime(condition, distance), buttReturn)
  const up = (distance: number): number => {
    if (keptFor === 0) return free(distance)
    if (distance <= keptFor) return keptHeight(condition, needle, pass.way, distance, buttReturn)
    return letGoHeight(condition, needle, travelTime(condition, distance - keptFor), buttReturn)
  }
  if (!passesUnder || since <= condition.dimensions.gateLag) return up(since)
  // The underside of the first gate, and then the second gate, keep down a butt that came low enough to be selected.
  const under = (distance: number): number => Math.min(up(distance), -condition.gate1)
  const end = sortedAfter(condition.dimensions)
  if (since <= end) return under(since)
  const left = decay(travelTime(condition, since - end), buttReturn)
  return rest + (under(end) - rest) * left
}

/** Where an outcome leaves a needle, in mm forward of the line. */
const travelOf = {
  selected: cams.selectedTravel,
  plain: -cams.plainTravel,
  unmoved: 0,
} as const satisfies Record<Outcome, number>

/** Where the pass before has left a needle, in mm forward of the line; on the line before pass 1. */
const setOut = (before: Pass | null, needle: Needle): number =>
  before ? travelOf[ofNeedle(before.came, needle)] : 0

const needleTravel = (
  dimensions: Dimensions,
  pass: Pass,
  before: Pass | null,
  needle: Needle,
  since: number,
): number => {
  if (since <= 0) {
    const ahead = -since - cams.presserFlat - cams.presserRamp
    return setOut(before, needle) * harmonic(ahead / cams.gather)
  }
  const came = ofNeedle(pass.came, needle)
  switch (came) {
    case 'unmoved':
      return 0
    case 'selected':
      return travelOf.selected * harmonic((since - gate2Start(dimensions)) / cams.gate2Length)
    case 'plain':
      return travelOf.plain * harmonic((since - dimensions.gateLag) / cams.gate1Length)
  }
}

/**
 * The machine of a run in pass `number` (from 1), stopped with the carriage at `x`, in needles: at a needle's index
 * the presser lets go of it.
 *
 * @example
 * // Strip 1 as the presser lets go of needle R1 in the first pass: pushed far enough for its catch.
 * const frame = frameAt(startRun(soundScenario([everyHole])), 1, 100)
 * measureOfStrip(frame.stripShifts, stripOfColumn(toColumn(1))) // 1.8 mm
 */
export const frameAt = (run: Run, number: number, x: number): Frame => {
  const { condition } = run
  const { dimensions } = condition
  const { columns, strips } = training
  const { needles } = dimensions
  const pass = run.passOf(number)
  const before = number > 1 ? run.passOf(number - 1) : null
  const { drive, way } = pass
  const pinHeights = new Float64Array(columns)
  const pinLeans = new Float64Array(columns)
  const rockerOuts = new Float64Array(columns)
  const stripShifts = new Float64Array(strips)
  const buttHeights = new Float64Array(needles)
  const needleTravels = new Float64Array(needles)
  for (const column of drive.drives) {
    const index = column.column - 1
    pinHeights[index] = pinHeight(condition, drive, column.column)
    pinLeans[index] = pinPush(condition, drive, column, x).push
    rockerOuts[index] = rockerOutAt(condition, drive, column, x)
  }
  for (const strip of allStrips) stripShifts[strip - 1] = stripShift(condition, drive, strip, x)
  for (const needle of needlesIn(condition.bed)) {
    const since = sinceLetGo(x, needle, way)
    if (markOfNeedle(condition.needleGone, needle) === 0)
      buttHeights[slotOf(needle, needles)] = buttHeight(condition, pass, needle, since)
    // With the gates standing aside no needle leaves the line.
    if (!condition.carriagePlain)
      needleTravels[slotOf(needle, needles)] = needleTravel(dimensions, pass, before, needle, since)
  }
  const half = columns / 2
  const left = beforeFirstColumn(condition)
  const columnAt = (place: number): number => wrap(place - left - half - 0.5) + half + 0.5
  const sweep = sweepX(condition, x, way)
  return {
    x,
    pass,
    before,
    condition,
    column: toColumn(modulo(Math.round(columnAt(sweep + way * leadOf(dimensions))) - 1, columns) + 1),
    sweepAt: columnAt(sweep),
    pinHeights,
    pinLeans,
    rockerOuts,
    stripShifts,
    buttHeights,
    needleTravels,
    departures: pass.departures.filter(({ needle }) => sinceLetGo(x, needle, way) >= dimensions.gateLag),
  }
}

/** The needle the presser is letting go of with the carriage at `x`; null where none in use is. */
export const needleUnderPresser = (condition: Condition, x: number): Needle | null => {
  const nearest = Math.round(x)
  return isNeedle(nearest) && nearest >= condition.bed.first && nearest <= condition.bed.last ? nearest : null
}
