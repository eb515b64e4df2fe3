import { columnOfNeedle, stripOfColumn, type Way } from './bed.ts'
import { type Condition, conditionOf } from './condition.ts'
import { dimensions } from './dimensions.ts'
import { buttReturnOf, freeHeight, heldHeight, type Outcome, sortByHeight, travelTime } from './gate.ts'
import { isHeld } from './hold.ts'
import { allNeedles, type CardRow } from './indices.ts'
import { at } from './lookup.ts'
import { holePunched } from './pin.ts'
import { type Departure, reasonOf } from './reason.ts'
import type { Scenario } from './scenario.ts'
import { type PassDrive, passDrive, stripShift } from './strip.ts'
import { dueRow } from './turn.ts'

/** One whole pass of the carriage. Arrays are indexed by needle, 0 to 199; needles out of use stay unmoved. */
export interface Pass {
  readonly pass: number
  readonly way: Way
  /** Card row read, from 1; null without a card. */
  readonly row: CardRow | null
  readonly drive: PassDrive
  /** What the sound machine would do with the card as punched. */
  readonly asked: readonly Outcome[]
  /** What came out. */
  readonly came: readonly Outcome[]
  /** 1 where a catch kept the butt down. */
  readonly held: Uint8Array
  /** Every needle in use that came out otherwise than asked, from the left, with the reason. */
  readonly departures: readonly Departure[]
}

/** Runs pass `pass` (from 1) of a machine in this condition. */
export const runPass = (condition: Condition, pass: number): Pass => {
  const drive = passDrive(condition, pass)
  const due = dueRow(condition, pass)
  const punched: boolean[] = []
  for (let column = 1; column <= dimensions.columns; column++)
    punched.push(holePunched(condition, due, column))
  const asked = new Array<Outcome>(dimensions.needles).fill('unmoved')
  const came = new Array<Outcome>(dimensions.needles).fill('unmoved')
  const held = new Uint8Array(dimensions.needles)
  const departures: Departure[] = []
  const time = travelTime(condition, dimensions.gateLag)
  for (let index = condition.bed.first; index <= condition.bed.last; index++) {
    const column = columnOfNeedle(index)
    const wanted: Outcome = punched[column - 1] ? 'selected' : 'plain'
    const shift = stripShift(condition, drive, stripOfColumn(column), index)
    const isKept = isHeld(condition, index, drive.way, shift)
    const height = isKept
      ? heldHeight(condition, index)
      : freeHeight(condition, index, drive.way, time, buttReturnOf(condition, index, pass))
    const outcome = condition.needleGone[index] ? 'unmoved' : sortByHeight(height, condition.gate1)
    asked[index] = wanted
    came[index] = outcome
    held[index] = isKept ? 1 : 0
    if (outcome !== wanted)
      departures.push(
        reasonOf(condition, drive, at(allNeedles, index), {
          asked: wanted,
          came: outcome,
          shift,
          held: isKept,
        }),
      )
  }
  return { pass, way: drive.way, row: drive.row, drive, asked, came, held, departures }
}

/** A scenario under way: its condition settled once, its passes worked out when first asked for. */
export interface Run {
  readonly scenario: Scenario
  readonly condition: Condition
  readonly passOf: (pass: number) => Pass
}

/** Sets a scenario going. Each pass is worked out once; the result depends on the scenario alone. */
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
