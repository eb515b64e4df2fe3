import { needleIndex, needleName, wholeBedOf } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { type Needle, toNeedle } from '../mechanism/indices.ts'
import { quote } from './troubles.ts'

/** What came of reading a list that somebody typed: its needles from the left, and a sentence for each trouble. */
export interface NeedleList {
  readonly needles: readonly number[]
  readonly troubles: readonly string[]
}

const endsOf = (needles: number): string => {
  const { first, last } = wholeBedOf(needles)
  return `${needleName(first)} to ${needleName(last)}`
}

/**
 * A needle that somebody typed, in small letters too, of a bed of so many needles; or a sentence that says why it is
 * none.
 */
export const readNeedle = (text: string, needles: number = dimensions.needles): Needle | string => {
  const name = text.trim()
  const needle = needleIndex(name.toUpperCase(), needles)
  const ends = endsOf(needles)
  if (needle !== null) return needle
  return name === '' ? `Write a needle: ${ends}.` : `${quote(name)} is no needle: they are called ${ends}.`
}

/** Troubles are named one by one up to so many. */
const mostNamed = 3

const indexesOf = (word: string, bedNeedles: number): number[] | null => {
  const [from = '', to, ...rest] = word.split('-')
  const first = needleIndex(from, bedNeedles)
  const last = to === undefined ? first : needleIndex(to, bedNeedles)
  if (first === null || last === null || rest.length > 0) return null
  const least = Math.min(first, last)
  return Array.from({ length: Math.abs(last - first) + 1 }, (_, n) => least + n)
}

const named = (names: readonly string[]): string => {
  const more = names.length - mostNamed
  return names.slice(0, mostNamed).join(', ') + (more > 0 ? ` and ${more} more` : '')
}

/**
 * Reads needles as a person types them: names such as R3 and ranges such as R3-R19, with blanks, commas or full stops
 * between, in small letters too, on a bed of so many needles. What is no needle, and what is named twice, is said.
 */
export const readNeedleList = (text: string, bedNeedles: number = dimensions.needles): NeedleList => {
  const plain = text
    .toUpperCase()
    .replace(/\s*(?:[-–—−]|\bTO\b)\s*/g, '-')
    .replace(/\b([LR])\s+(?=\d)/g, '$1')
  const words = plain.split(/[\s,;.]+/).filter((word) => word !== '')
  const found = new Set<number>()
  const twice = new Set<number>()
  const strange: string[] = []
  for (const word of words) {
    const indexes = indexesOf(word, bedNeedles)
    if (!indexes) strange.push(quote(word))
    for (const index of indexes ?? []) (found.has(index) ? twice : found).add(index)
  }
  const troubles = [
    ...(strange.length > 0
      ? [
          `${named(strange)} ${strange.length > 1 ? 'are' : 'is'} no needle here: they run from ${endsOf(bedNeedles)}.`,
        ]
      : []),
    ...(twice.size > 0
      ? [`You named ${named([...twice].map((needle) => needleName(toNeedle(needle))))} more than once.`]
      : []),
  ]
  return { needles: [...found].sort((one, other) => one - other), troubles }
}
