import { dimensions } from '../mechanism/dimensions.ts'
import { changedCode, changedNeedle, codes } from './outcome.ts'
import type { Setting, Shown } from './shown.ts'

/** A bed as it was noted: a letter a needle from the left, s selected, p plain, u unmoved, ? not looked at. */
export type Letters = string

const codeOfLetter: Readonly<Record<string, number>> = { s: codes.selected, p: codes.plain, u: codes.unmoved }

/** The letters that a bed is noted in. */
export const letters = 'spu?'

/** What one noted bed says, as logarithms of chances. */
export interface Witness {
  readonly sound: Uint8Array
  /** By needle: the outcome noted; -1 where it was not looked at. */
  readonly noted: Int8Array
  readonly slip: number
  /** The needles that were looked at. */
  readonly looked: number
  /** How likely the note is on a sound machine. */
  readonly log: number
}

/** Chance that an outcome is noted as another: one of the two wrong letters, evenly. */
const wrong = (slip: number): number => slip / 2

/**
 * Log of the chance of a note where the outcome is `code`, and where a plain needle is selected with chance `late`.
 * A needle not looked at says nothing.
 */
const logOf = (noted: number, code: number, slip: number, late: number): number => {
  if (noted < 0) return 0
  if (code !== codes.plain || late === 0) return Math.log(noted === code ? 1 - slip : wrong(slip))
  const ifPlain = noted === codes.plain ? 1 - slip : wrong(slip)
  const ifLate = noted === codes.selected ? 1 - slip : wrong(slip)
  return Math.log(late * ifLate + (1 - late) * ifPlain)
}

/** Reads a noted bed of 200 letters beside what a sound machine does in its setting. */
export const witnessOf = ({ sound }: Setting, text: Letters, slip: number): Witness => {
  const noted = Int8Array.from({ length: dimensions.needles }, (_, n) => codeOfLetter[text.charAt(n)] ?? -1)
  let log = 0
  let looked = 0
  for (const [index, code] of noted.entries()) {
    log += logOf(code, sound.codes[index] ?? 0, slip, 0)
    if (code >= 0) looked++
  }
  return { sound: sound.codes, noted, slip, looked, log }
}

/** How much more likely the note is where all plain needles may be late: a sum over the bed by outcome and note. */
const lateGain = ({ sound, noted, slip }: Witness, late: number): number => {
  const counts = [0, 0, 0]
  for (let n = 0; n < sound.length; n++) {
    const code = noted[n] ?? -1
    if (code >= 0 && sound[n] === codes.plain) counts[code] = (counts[code] ?? 0) + 1
  }
  return counts.reduce(
    (sum, count, code) =>
      sum + count * (logOf(code, codes.plain, slip, late) - logOf(code, codes.plain, slip, 0)),
    0,
  )
}

/**
 * By how much a prediction makes a note more likely than a sound machine does, as a logarithm; `late` is the chance
 * that a needle which comes out plain is selected after all.
 */
export const gainOf = (witness: Witness, shown: Shown, late = shown.chance): number => {
  const { sound, noted, slip } = witness
  let gain = late > 0 ? lateGain(witness, late) : 0
  for (const change of shown.changed) {
    const needle = changedNeedle(change)
    const code = noted[needle] ?? -1
    if (code >= 0)
      gain += logOf(code, changedCode(change), slip, late) - logOf(code, sound[needle] ?? 0, slip, late)
  }
  return gain
}

/** What of a prediction the note could show: its changes on the needles that were looked at. */
export const seenOf = ({ noted, looked }: Witness, shown: Shown): Shown =>
  looked === noted.length
    ? shown
    : {
        changed: shown.changed.filter((change) => (noted[changedNeedle(change)] ?? -1) >= 0),
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
const predicted = ({ sound }: Witness, shown: Shown | undefined): Uint8Array => {
  const bed = Uint8Array.from(sound)
  for (const change of shown?.changed ?? []) bed[changedNeedle(change)] = changedCode(change)
  return bed
}

/** Calls back for every needle looked at, with whether its note departs from the sound bed and meets a prediction. */
export const compare = (
  witness: Witness,
  shown: Shown | undefined,
  each: (needle: number, departs: boolean, isMet: boolean) => void,
): void => {
  const { sound, noted } = witness
  const bed = predicted(witness, shown)
  const mayBeLate = (shown?.chance ?? 0) > 0
  for (let needle = 0; needle < noted.length; needle++) {
    const code = noted[needle] ?? -1
    if (code < 0) continue
    const isLate = mayBeLate && code === codes.selected && bed[needle] === codes.plain
    each(needle, code !== sound[needle], code === bed[needle] || isLate)
  }
}

/** How well a prediction meets the notes of all views. */
export const fitOf = (witnesses: readonly Witness[], shown: readonly Shown[]): Fit => {
  const fit = { departures: 0, explained: 0, against: 0, looked: 0 }
  for (const [n, witness] of witnesses.entries())
    compare(witness, shown[n], (_, departs, isMet) => {
      fit.looked++
      if (departs) fit.departures++
      if (departs && isMet) fit.explained++
      if (!isMet) fit.against++
    })
  return fit
}
