import { needleIndex, needleName, wholeBedOf } from './bed.ts'
import { mostRows } from './card.ts'
import { dimensions } from './dimensions.ts'
import { type Fault, faultId, faultPasses, indexKindsOf, isIndex, lettersOf, makeFault } from './fault.ts'
import {
  type Amount,
  type FaultKindName,
  faultKindNames,
  faultKinds,
  type IndexKind,
  indexKinds,
} from './fault-kinds.ts'
import { bedLengths } from './indices.ts'
import { at } from './lookup.ts'
import { readNumber } from './number.ts'

/** What came of reading a fault's id: the fault, perhaps with a remark, or a reason why not. */
export type FaultReading =
  | { readonly kind: 'fault'; readonly fault: Fault; readonly remark: string | null }
  | { readonly kind: 'refused'; readonly reason: string }

const readIndex = (kind: IndexKind, text: string, needles: number): number | null => {
  if (kind === 'needle') return needleIndex(text, needles)
  return /^[1-9]\d{0,3}$/.test(text) && isIndex[kind](Number(text)) ? Number(text) : null
}

/** The first and the last index of each kind, as ids write them; of needles it depends on the bed. */
const ranges: Readonly<Record<Exclude<IndexKind, 'needle'>, string>> = {
  row: `1 to ${mostRows}`,
  column: `1 to ${dimensions.columns}`,
  strip: `1 to ${dimensions.strips}`,
  pass: `${faultPasses.first} to ${faultPasses.last}`,
}

const rangeOf = (kind: IndexKind, needles: number): string => {
  if (kind !== 'needle') return ranges[kind]
  const { first, last } = wholeBedOf(needles)
  return `${needleName(first)} to ${needleName(last)}`
}

/** A text that somebody wrote, as a sentence names it: plain numbers and needles as they are, all else in quotation marks and short. */
const named = (text: string): string =>
  /^[-+LR]?\d[\d.]{0,11}$/.test(text) ? text : `“${Array.from(text).slice(0, 40).join('')}”`

/** Why an index could not be read, as the end of a sentence. */
const indexTrouble = (kind: IndexKind, text: string, needles: number): string => {
  const there = `they run from ${rangeOf(kind, needles)}`
  return text === '' ? `no ${kind} is named; ${there}` : `there is no ${kind} ${named(text)}; ${there}`
}

const refused = (reason: string): FaultReading => ({ kind: 'refused', reason })

const readWithAmount = (
  kind: FaultKindName,
  indices: readonly number[],
  amount: Amount,
  text: string,
): FaultReading => {
  const value = readNumber(text)
  const range = `${amount.least} to ${amount.most} ${amount.unit}`
  if (text === '') return refused(`the number is missing; it runs from ${range}`)
  if (value === null) return refused(`${named(text)} is not a number; it runs from ${range}`)
  const clamped = Math.min(amount.most, Math.max(amount.least, value))
  const fault = makeFault(kind, indices, clamped)
  if (clamped === value) return { kind: 'fault', fault, remark: null }
  return { kind: 'fault', fault, remark: `${text} is outside ${range}, so ${clamped} is used` }
}

/** What a fault's id is made of: its kind, and the texts of its indices. */
interface IdParts {
  readonly kind: FaultKindName
  readonly texts: readonly string[]
}

/** The kind of fault whose pattern has these words, and the words that are in the place of its indices. */
const partsOfWords = (words: readonly string[]): IdParts | null => {
  const kind = faultKindNames.find((name) => {
    const pattern = faultKinds[name].pattern.split('.')
    return pattern.length === words.length && pattern.every((w, n) => w in indexKinds || w === words[n])
  })
  if (!kind) return null
  return { kind, texts: words.filter((_, n) => at(lettersOf(faultKinds[kind].pattern), n) !== null) }
}

/** The same for an id in which an index is a number with decimals, and so looks like two words. */
const partsWithDecimals = (id: string): IdParts | null => {
  for (const kind of faultKindNames) {
    const words = faultKinds[kind].pattern
      .split('.')
      .map((word) => (word in indexKinds ? '([-+\\d.]+)' : word))
    const match = new RegExp(`^${words.join('\\.')}$`).exec(id)
    if (match) return { kind, texts: match.slice(1) }
  }
  return null
}

/**
 * Reads a fault of a known kind from the texts of its indices, in the order of its pattern, and of its amount, null for
 * none, on a bed of so many needles. Never throws; says in words what could not be read or was changed.
 */
export const readFaultOfKind = (
  kind: FaultKindName,
  texts: readonly string[],
  amountText: string | null,
  needles: number = dimensions.needles,
): FaultReading => {
  const { amount } = faultKinds[kind]
  const indices: number[] = []
  for (const [n, index] of indexKindsOf(kind).entries()) {
    const text = at(texts, n)
    const value = readIndex(index, text, needles)
    if (value === null) return refused(indexTrouble(index, text, needles))
    indices.push(value)
  }
  if (!amount)
    return amountText === null
      ? { kind: 'fault', fault: makeFault(kind, indices, null), remark: null }
      : refused('this fault takes no number')
  if (amountText !== null) return readWithAmount(kind, indices, amount, amountText)
  if (amount.optional) return { kind: 'fault', fault: makeFault(kind, indices, amount.usual), remark: null }
  return refused(`it needs a number, such as ${faultId(makeFault(kind, indices, amount.usual))}`)
}

/**
 * Reads a fault's id as links write it, on a bed of so many needles: `strip.3.seized`, `sweep.worn=0.4`.
 * Never throws; says in words what could not be read or was changed.
 */
export const readFault = (id: string, needles: number = dimensions.needles): FaultReading => {
  const equals = id.indexOf('=')
  const words = equals < 0 ? id : id.slice(0, equals)
  const parts = partsOfWords(words.split('.')) ?? partsWithDecimals(words)
  if (!parts) return refused(words === '' ? 'its name is missing' : 'no such fault is known')
  return readFaultOfKind(parts.kind, parts.texts, equals < 0 ? null : id.slice(equals + 1), needles)
}

/** The fault of an id that is known to be right on a bed of any length. Throws a RangeError that says why where it is not. */
export const faultOf = (id: string): Fault => {
  const reading = readFault(id, bedLengths.most)
  if (reading.kind === 'refused') throw new RangeError(`${id}: ${reading.reason}`)
  return reading.fault
}
