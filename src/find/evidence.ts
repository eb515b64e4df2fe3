import { dimensions } from '../mechanism/dimensions.ts'
import type { Letters } from './letters.ts'
import { changedCode, changedNeedle, codes } from './packed-change.ts'
import type { Setting, Shown } from './shown.ts'

const codeOfLetter: Readonly<Record<string, number>> = { s: codes.selected, p: codes.plain, u: codes.unmoved }

/** What one noted bed says, as logarithms of chances. */
export interface Observation {
  readonly sound: Uint8Array
  /** By needle: the outcome noted; -1 where it was not looked at. */
  readonly noted: Int8Array
  readonly slip: number
  readonly logs: { readonly right: number; readonly wrong: number }
  /** The needles that were looked at. */
  readonly looked: number
  /** How likely the note is on a sound machine. */
  readonly log: number
}

/** Logs of the chances that an outcome is noted as it is, and as a certain one of the two wrong letters. */
const logsOf = (slip: number): { right: number; wrong: number } => ({
  right: Math.log(1 - slip),
  wrong: Math.log(slip / 2),
})

/** Log of the chance of a note where a plain needle is selected with chance `late`, each noted rightly or wrongly. */
const lateLog = (noted: number, late: number, { right, wrong }: Observation['logs']): number =>
  Math.log(
    late * Math.exp(noted === codes.selected ? right : wrong) +
      (1 - late) * Math.exp(noted === codes.plain ? right : wrong),
  )

/** Logs of the chances of a plain needle's notes, by what is noted, where it is late with chance `late`. */
const plainLogs = (late: number, logs: Observation['logs']): number[] =>
  [codes.selected, codes.plain, codes.unmoved].map((noted) => lateLog(noted, late, logs))

/** Reads a noted bed of 200 letters beside what a sound machine does in its setting. */
export const observationOf = ({ sound }: Setting, text: Letters, slip: number): Observation => {
  const noted = Int8Array.from({ length: dimensions.needles }, (_, n) => codeOfLetter[text.charAt(n)] ?? -1)
  const logs = logsOf(slip)
  let log = 0
  let looked = 0
  for (const [index, code] of noted.entries()) {
    if (code < 0) continue
    log += code === sound.codes[index] ? logs.right : logs.wrong
    looked++
  }
  return { sound: sound.codes, noted, slip, logs, looked, log }
}

/** How much more likely the note is where all plain needles may be late: a sum over the bed by note. */
const lateGain = ({ sound, noted, logs }: Observation, late: number): number => {
  const counts = [0, 0, 0]
  for (let n = 0; n < sound.length; n++) {
    const code = noted[n]!
    if (code >= 0 && sound[n] === codes.plain) counts[code]!++
  }
  const before = plainLogs(0, logs)
  return plainLogs(late, logs).reduce((sum, log, code) => sum + counts[code]! * (log - before[code]!), 0)
}

/**
 * By how much the needles that a prediction changes make a note more likely, as a logarithm; `late` is the chance that a
 * needle which comes out plain is selected after all.
 */
export const changeGain = ({ sound, noted, logs }: Observation, { changed }: Shown, late: number): number => {
  if (changed.length === 0) return 0
  const plain = late > 0 ? plainLogs(late, logs) : null
  const logOf = (note: number, code: number): number =>
    plain && code === codes.plain ? plain[note]! : note === code ? logs.right : logs.wrong
  let gain = 0
  for (const change of changed) {
    const needle = changedNeedle(change)
    const note = noted[needle]!
    if (note >= 0) gain += logOf(note, changedCode(change)) - logOf(note, sound[needle]!)
  }
  return gain
}

/** By how much a prediction makes a note more likely than a sound machine does, as a logarithm. */
export const gainOf = (observation: Observation, shown: Shown): number =>
  changeGain(observation, shown, shown.chance) + (shown.chance > 0 ? lateGain(observation, shown.chance) : 0)

/** What of a prediction the note could show: its changes on the needles that were looked at. */
export const visibleOf = ({ noted, looked }: Observation, shown: Shown): Shown =>
  looked === noted.length
    ? shown
    : {
        changed: shown.changed.filter((change) => noted[changedNeedle(change)]! >= 0),
        chance: looked > 0 ? shown.chance : 0,
      }

/** How well a prediction meets a note, in needles. */
export interface Fit {
  /** Noted otherwise than a sound machine would have it. */
  readonly departures: number
  /** Of these, as predicted. */
  readonly explained: number
  /** Noted otherwise than predicted, those not looked at apart. */
  readonly against: number
  readonly looked: number
}

/** The bed that a prediction makes of the sound one, by needle. */
const predicted = ({ sound }: Observation, shown: Shown | undefined): Uint8Array => {
  const bed = Uint8Array.from(sound)
  for (const change of shown?.changed ?? []) bed[changedNeedle(change)] = changedCode(change)
  return bed
}

/** Calls back for every needle looked at, with whether its note departs from the sound bed and meets a prediction. */
export const compare = (
  observation: Observation,
  shown: Shown | undefined,
  each: (needle: number, departs: boolean, isMet: boolean) => void,
): void => {
  const { sound, noted } = observation
  const bed = predicted(observation, shown)
  const mayBeLate = (shown?.chance ?? 0) > 0
  for (let needle = 0; needle < noted.length; needle++) {
    const code = noted[needle]!
    if (code < 0) continue
    const isLate = mayBeLate && code === codes.selected && bed[needle] === codes.plain
    each(needle, code !== sound[needle], code === bed[needle] || isLate)
  }
}

/** How well a prediction meets the notes of all views. */
export const fitOf = (observations: readonly Observation[], shown: readonly Shown[]): Fit => {
  const fit = { departures: 0, explained: 0, against: 0, looked: 0 }
  for (const [n, observation] of observations.entries())
    compare(observation, shown[n], (_, departs, isMet) => {
      fit.looked++
      if (departs) fit.departures++
      if (departs && isMet) fit.explained++
      if (!isMet) fit.against++
    })
  return fit
}
