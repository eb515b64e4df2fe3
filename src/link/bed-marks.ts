import type { Outcome } from '../mechanism/gate.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { needleAtSlot, slotOf } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import { needlesOf, readRun, writeNeedles } from './needle-runs.ts'
import { quote } from './troubles.ts'

/**
 * How a needle came out, beside what the card asked: right, wrong (plain for selected, or selected for plain), unmoved,
 * or not looked at.
 */
export const marks = ['r', 'w', 'u', 'n'] as const
export type NeedleMark = (typeof marks)[number]

/** A bed as somebody marked it: a mark for each of its needles, from the left. */
export type BedMarks = readonly NeedleMark[]

/** A bed of so many needles, every one of which came out as the card asks. */
export const allRightOf = (needles: number): BedMarks => new Array<NeedleMark>(needles).fill('r')

/** The same of the training machine's bed. */
export const allRight: BedMarks = allRightOf(dimensions.needles)

const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_'

/** Needles in one character of a packed bed, two bits each. */
const packed = 3
const packedLength = (needles: number): number => Math.ceil(needles / packed)

const pack = (bed: BedMarks): string =>
  Array.from({ length: packedLength(bed.length) }, (_, n) => {
    const codes = [0, 1, 2].map((k) => marks.indexOf(bed[packed * n + k] ?? 'r'))
    return alphabet.charAt(codes.reduce((sum, code) => sum * marks.length + code, 0))
  }).join('')

const unpack = (text: string, needles: number): BedMarks | null => {
  if (text.length !== packedLength(needles)) return null
  const codes = Array.from(text, (character) => alphabet.indexOf(character))
  if (codes.includes(-1)) return null
  return codes
    .flatMap((code) => [code >> 4, (code >> 2) & 3, code & 3].map((mark): NeedleMark => at(marks, mark)))
    .slice(0, needles)
}

/**
 * Writes a marked bed: for each mark that is not right its letter and its needles, such as `wL97-R96x8.nR50-R100`; or,
 * where that is shorter, the whole bed packed after an `x`. Empty where every needle is right.
 */
export const writeMarks = (bed: BedMarks): string => {
  const words = marks.slice(1).flatMap((mark) => {
    const needles = bed.flatMap((other, slot) => (other === mark ? [needleAtSlot(slot, bed.length)] : []))
    return needles.length === 0 ? [] : [`${mark}${writeNeedles(needles)}`]
  })
  const text = words.join('.')
  return text.length > packedLength(bed.length) + 1 ? `x${pack(bed)}` : text
}

/** What came of reading a marked bed: it is always whole, and every part that could not be read is named. */
export interface MarksReading {
  readonly marks: BedMarks
  readonly leftOut: readonly string[]
}

/** Reads what `writeMarks` writes, of a bed of so many needles. A needle marked twice keeps the later mark. */
export const readMarks = (text: string, needles: number = dimensions.needles): MarksReading => {
  const unmarked = needles === dimensions.needles ? allRight : allRightOf(needles)
  if (text === '') return { marks: unmarked, leftOut: [] }
  if (text.startsWith('x')) {
    const whole = unpack(text.slice(1), needles)
    return whole ? { marks: whole, leftOut: [] } : { marks: unmarked, leftOut: [quote(text)] }
  }
  const bed = [...unmarked]
  const leftOut: string[] = []
  for (const word of text.split('.')) {
    const mark = marks.slice(1).find((letter) => word.startsWith(letter))
    if (!mark) {
      leftOut.push(quote(word))
      continue
    }
    for (const part of word.slice(1).split('_')) {
      const run = readRun(part, needles)
      if (run) for (const needle of needlesOf(run)) bed[slotOf(needle, needles)] = mark
      else leftOut.push(quote(part.trim() === '' ? word.trim() : part))
    }
  }
  return { marks: bed, leftOut }
}

/** How a needle came out, or that nobody looked. */
export type NotedOutcome = Outcome | 'unseen'

/** How a needle came out that was expected to do this and was marked so. */
export const notedAs = (mark: NeedleMark, expected: Outcome): NotedOutcome => {
  if (mark === 'n') return 'unseen'
  if (mark === 'u') return 'unmoved'
  if (mark === 'r') return expected
  return expected === 'selected' ? 'plain' : 'selected'
}

/** The mark of a needle that was expected to do one thing and was noted as another. */
export const markAs = (noted: NotedOutcome, expected: Outcome): NeedleMark => {
  if (noted === 'unseen') return 'n'
  if (noted === expected) return 'r'
  return noted === 'unmoved' ? 'u' : 'w'
}
