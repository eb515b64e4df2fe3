import { columnOfNeedle, needlesIn, stripOfColumn, stripOfNeedle, type Way } from './bed.ts'
import { type Condition, conditionOf } from './condition.ts'
import { type PassDrive, passDrive } from './drive.ts'
import { type Outcome, outcomeOf } from './gate.ts'
import { isTaken } from './hold.ts'
import { allColumns, type CardRow, ofColumn, slotOf } from './indices.ts'
import { at, measureAt } from './lookup.ts'
import { holePunched } from './pin.ts'
import { type Departure, reasonOf } from './reason.ts'
import type { Scenario } from './scenario.ts'
import { holdsFor, stripShift } from './strip.ts'
import { dueRow } from './turn.ts'

/** One whole pass of the carriage. Lists have one entry for each needle; needles out of use stay unmoved. */
export interface Pass {
  readonly pass: number
  readonly way: Way
  /** Card row read, from 1; null without a card. */
  readonly row: CardRow | null
  readonly drive: PassDrive
  /** What the sound machine would do with the card as punched. */
  readonly asked: readonly Outcome[]
  /** What each needle did. */
  readonly came: readonly Outcome[]
  /**
   * How far the carriage travels, in needles from the presser's release, until a catch lets the butt go that it took: 0
   * where none took it, Infinity where it is kept up to the first gate.
   */
  readonly keptFor: Float64Array
  /** Every needle in use that came out otherwise than asked, from the left, with the reason. */
  readonly departures: readonly Departure[]
}

/** The reason of each needle that came out otherwise than asked, from the left. */
const departuresOf = (
  condition: Condition,
  drive: PassDrive,
  { asked, came, keptFor }: Pick<Pass, 'asked' | 'came' | 'keptFor'>,
): Departure[] =>
  needlesIn(condition.bed).flatMap((needle) => {
    const slot = slotOf(needle, condition.dimensions.needles)
    const [wanted, outcome] = [at(asked, slot), at(came, slot)]
    if (outcome === wanted) return []
    const shift = stripShift(condition, drive, stripOfNeedle(needle, condition), needle)
    const kept = measureAt(keptFor, slot)
    return [reasonOf(condition, drive, needle, { asked: wanted, came: outcome, shift, keptFor: kept })]
  })

/** Runs pass `pass` (from 1) of a machine in this condition. */
export const runPass = (condition: Condition, pass: number): Pass => {
  const drive = passDrive(condition, pass)
  const due = dueRow(condition, pass)
  const punched = allColumns.map((column) => holePunched(condition, due, column))
  const { needles } = condition.dimensions
  const asked = new Array<Outcome>(needles).fill('unmoved')
  const came = new Array<Outcome>(needles).fill('unmoved')
  const keptFor = new Float64Array(needles)
  for (const needle of needlesIn(condition.bed)) {
    const column = columnOfNeedle(needle, condition)
    const wanted: Outcome = ofColumn(punched, column) ? 'selected' : 'plain'
    const strip = stripOfColumn(column)
    const shift = stripShift(condition, drive, strip, needle)
    const kept = isTaken(condition, needle, drive.way, shift) ? holdsFor(condition, drive, strip, needle) : 0
    const outcome = outcomeOf(condition, needle, drive.way, pass, kept)
    const slot = slotOf(needle, needles)
    asked[slot] = wanted
    came[slot] = outcome
    keptFor[slot] = kept
  }
  let departures: readonly Departure[] | undefined
  return {
    pass,
    way: drive.way,
    row: drive.row,
    drive,
    asked,
    came,
    keptFor,
    // The reasons take as long as all the rest, and most who run a pass ask for none.
    get departures() {
      departures ??= departuresOf(condition, drive, { asked, came, keptFor })
      return departures
    },
  }
}

/** A scenario under way: its condition is settled once, its passes are computed when first wanted. */
export interface Run {
  readonly scenario: Scenario
  readonly condition: Condition
  /** Pass 1, 2, 3 … of the machine. */
  readonly passOf: (pass: number) => Pass
}

/**
 * Starts a machine. Each pass is computed once; the result depends on the scenario alone.
 *
 * @example
 * // A sound machine with a card of one row, all holes: its first pass selects every needle.
 * const run = startRun(soundScenario([everyHole]))
 * run.passOf(1).came.every((outcome) => outcome === 'selected') // true
 *
 * @example
 * // With strip 3 seized every eighth needle is missed, and each departure names the part.
 * const seized = startRun({ ...soundScenario([everyHole]), faults: [faultOf('strip.3.seized')] })
 * seized.passOf(1).departures.map(({ part }) => part) // ['strip.3', 'strip.3', …], 25 of them
 */
export const startRun = (scenario: Scenario): Run => {
  const condition = conditionOf(scenario)
  const passes = new Map<number, Pass>()
  const passOf = (number: number): Pass => {
    let pass = passes.get(number)
    if (!pass) passes.set(number, (pass = runPass(condition, number)))
    return pass
  }
  return { scenario, condition, passOf }
}
