import { needleName } from '../mechanism/bed.ts'
import { at, lastOf } from '../mechanism/lookup.ts'
import { type Needle, toNeedle } from '../mechanism/indices.ts'

/** A number and its unit, between which no line breaks. */
export const withUnit = (value: number | string, unit: string): string => `${value}\u00a0${unit}`

/** A length in mm for a sentence, with one or two decimals and its unit: 1.8 mm, 0.45 mm. */
export const millimetres = (value: number): string => {
  const rounded = Math.abs(value) < 0.005 ? 0 : value
  return withUnit(rounded.toFixed(Math.abs(rounded * 10 - Math.round(rounded * 10)) < 0.05 ? 1 : 2), 'mm')
}

/** Words as a list: a; a and b; a, b and c. */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${lastOf(words)}`

/** A count and its noun. */
export const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`

/** The difference that all neighbours have in common; null where they differ or there are fewer than three. */
export const sharedStep = (indexes: readonly number[]): number | null => {
  if (indexes.length < 3) return null
  const steps = indexes.slice(1).map((index, n) => index - at(indexes, n))
  const step = at(steps, 0)
  return steps.every((one) => one === step) ? step : null
}

/** A range of needles: needle R3, or needles L24 to R24. */
export const rangeWords = (first: Needle, last: Needle): string =>
  first === last ? `needle ${needleName(first)}` : `needles ${needleName(first)} to ${needleName(last)}`

const ordinals: Readonly<Record<number, string>> = {
  2: 'second',
  8: 'eighth',
  16: 'sixteenth',
  24: 'twenty-fourth',
}

/** Needles by name, from the left: all of a few, or how many with the first, the last and their step. */
export const needlesListed = (indexes: readonly number[]): string => {
  const first = indexes[0]
  const last = indexes.at(-1)
  if (first === undefined || last === undefined) return 'none'
  if (indexes.length <= 4) return listed(indexes.map((needle) => needleName(toNeedle(needle))))
  const step = sharedStep(indexes)
  const every =
    step === null ? '' : step === 1 ? ', one after the other' : `, every ${ordinals[step] ?? `${step}th`}`
  return `${indexes.length} needles from ${needleName(toNeedle(first))} to ${needleName(toNeedle(last))}${every}`
}
