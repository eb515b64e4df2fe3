import type { Way } from './bed.ts'
import type { Condition } from './condition.ts'
import { cams, dimensions } from './dimensions.ts'
import { buttReturnOf, freeHeight, heldHeight, travelTime } from './gate.ts'
import { dipOf } from './hold.ts'
import { type Column, isNeedle, type Needle, toColumn } from './indices.ts'
import type { Pass, Run } from './pass.ts'
import { pinHeight } from './pin.ts'
import type { Departure } from './reason.ts'
import { rockerOut } from './rocker.ts'
import { pinPush, stripShift } from './strip.ts'
import { wrap } from './sweep.ts'

/** Where every part stands with the carriage at `x`. Lengths in mm; columns and strips from index 0. */
export interface Frame {
  readonly x: number
  readonly pass: Pass
  /** The pass before, whose needles still stand set out ahead of the carriage; null in pass 1. */
  readonly before: Pass | null
  readonly condition: Condition
  /** Column, 1 to 24, whose pin the sweep is nearest to. */
  readonly column: Column
  /** Where the sweep's middle is, in columns: 1 over the first pin, at most 24.5. */
  readonly sweepAt: number
  readonly pinHeights: Float64Array
  /** How far each pin is pushed aside, in the way of travel. */
  readonly pinLeans: Float64Array
  readonly rockerOuts: Float64Array
  readonly stripShifts: Float64Array
  /** Height of each needle's butt above the rest level; negative where it is pressed or held down. */
  readonly buttHeights: Float64Array
  /** How far each needle stands from the line: forward positive. */
  readonly needleTravels: Float64Array
  /** Departures that have shown by now: the needle has reached its gate. */
  readonly departures: readonly Departure[]
}

/** Distance in needles behind the presser's trailing edge by which a needle has been sorted. */
export const sortedAfter = cams.gate2Start + cams.gate2Length

/** Simple harmonic rise from 0 to 1 over `share` 0 to 1, level outside. */
export const harmonic = (share: number): number =>
  share <= 0 ? 0 : share >= 1 ? 1 : (1 - Math.cos(Math.PI * share)) / 2

/** How many needles of travel ago the presser let go of needle `index`; negative while it has not yet. */
export const sinceLetGo = (x: number, index: number, way: Way): number => way * (x - index)

const buttHeight = (condition: Condition, pass: Pass, index: number, since: number): number => {
  const rest = condition.buttError[index] ?? 0
  const dip = dipOf(condition, index, pass.way)
  if (since <= 0)
    return rest - dip * harmonic((since + cams.presserFlat + cams.presserRamp) / cams.presserRamp)
  const buttReturn = buttReturnOf(condition, index, pass.pass)
  if (!pass.held[index])
    return freeHeight(condition, index, pass.way, travelTime(condition, since), buttReturn)
  const kept = (distance: number): number =>
    Math.min(
      heldHeight(condition, index),
      rest - dip * Math.exp(-travelTime(condition, distance) / buttReturn),
    )
  if (since <= sortedAfter) return kept(since)
  const springing = Math.exp(-travelTime(condition, since - sortedAfter) / buttReturn)
  return rest + (kept(sortedAfter) - rest) * springing
}

/** Where an outcome leaves a needle, in mm forward of the line. */
const setOut = (pass: Pass | null, index: number): number => {
  const came = pass?.came[index]
  return came === 'selected' ? cams.selectedTravel : came === 'plain' ? -cams.plainTravel : 0
}

const needleTravel = (pass: Pass, before: Pass | null, index: number, since: number): number => {
  if (since <= 0) {
    const ahead = -since - cams.presserFlat - cams.presserRamp
    return setOut(before, index) * harmonic(ahead / cams.gather)
  }
  const came = pass.came[index]
  if (came === 'unmoved') return 0
  return came === 'selected'
    ? cams.selectedTravel * harmonic((since - cams.gate2Start) / cams.gate2Length)
    : -cams.plainTravel * harmonic((since - dimensions.gateLag) / cams.gate1Length)
}

/** The machine of a run in pass `number`, stopped with the carriage at `x` needles. */
export const frameAt = (run: Run, number: number, x: number): Frame => {
  const { condition } = run
  const { columns, strips, needles, gateLag } = dimensions
  const pass = run.passOf(number)
  const before = number > 1 ? run.passOf(number - 1) : null
  const { drive, way, row } = pass
  const pinHeights = new Float64Array(columns)
  const pinLeans = new Float64Array(columns)
  const rockerOuts = new Float64Array(columns)
  const stripShifts = new Float64Array(strips)
  const buttHeights = new Float64Array(needles)
  const needleTravels = new Float64Array(needles)
  for (const column of drive.drives) {
    const index = column.column - 1
    const { push } = pinPush(condition, drive, column, x)
    pinHeights[index] = pinHeight(condition, row, column.column)
    pinLeans[index] = push
    rockerOuts[index] = rockerOut(condition, column.column, push)
  }
  for (let strip = 1; strip <= strips; strip++)
    stripShifts[strip - 1] = stripShift(condition, drive, strip, x)
  for (let index = condition.bed.first; index <= condition.bed.last; index++) {
    const since = sinceLetGo(x, index, way)
    if (!condition.needleGone[index]) buttHeights[index] = buttHeight(condition, pass, index, since)
    needleTravels[index] = needleTravel(pass, before, index, since)
  }
  const half = columns / 2
  const shifted = x + condition.timing + (way * condition.slack) / 2 - (needles / 2 - 1)
  const sweepAt = wrap(shifted - half - 0.5) + half + 0.5
  return {
    x,
    pass,
    before,
    condition,
    column: toColumn(((Math.round(sweepAt) - 1 + columns) % columns) + 1),
    sweepAt,
    pinHeights,
    pinLeans,
    rockerOuts,
    stripShifts,
    buttHeights,
    needleTravels,
    departures: pass.departures.filter(({ needle }) => sinceLetGo(x, needle, way) >= gateLag),
  }
}

/** The needle the presser is letting go of with the carriage at `x`; null where none in use is. */
export const needleUnderPresser = (condition: Condition, x: number): Needle | null => {
  const nearest = Math.round(x)
  return isNeedle(nearest) && nearest >= condition.bed.first && nearest <= condition.bed.last ? nearest : null
}
