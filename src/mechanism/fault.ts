import { needleIndex, type NeedleName, needleName, sideOfTurn, wholeBedOf } from './bed.ts'
import { mostRows } from './card.ts'
import { dimensions } from './dimensions.ts'
import {
  type Amount,
  type Catalogue,
  type FaultKindName,
  faultKindNames,
  faultKinds,
  type IndexKind,
  indexKinds,
} from './fault-kinds.ts'
import {
  bedLengths,
  type CardRow,
  type Column,
  isCardRow,
  isColumn,
  isNeedle,
  isStrip,
  type Needle,
  type Strip,
  toNeedle,
} from './indices.ts'
import { at } from './lookup.ts'
import { readNumber } from './number.ts'
import { parsePart, type PartId, partId, sortedByIds } from './part.ts'

type TypeOf = { row: CardRow; column: Column; strip: Strip; pass: number; needle: Needle }
type Letters = typeof indexKinds
type IndexOf<Word> = Word extends keyof Letters ? [TypeOf[Letters[Word]]] : []
type IndicesOf<Pattern> = Pattern extends `${infer Word}.${infer Rest}`
  ? [...IndexOf<Word>, ...IndicesOf<Rest>]
  : IndexOf<Pattern>

/** One thing wrong with the machine, of one kind or of several. */
export type FaultOf<Kind extends FaultKindName> = {
  [Each in Kind]: {
    readonly kind: Each
    /** The indices in the kind's pattern, in order. Passes count from 1. */
    readonly at: Readonly<IndicesOf<Catalogue[Each]['pattern']>>
    /** How much, in the kind's unit; null where the kind has no amount. */
    readonly amount: Catalogue[Each] extends { amount: object } ? number : null
  }
}[Kind]

/** One thing wrong with the machine. */
export type Fault = FaultOf<FaultKindName>

type WithIndices<Pattern extends string> = Pattern extends `${infer Word}.${infer Rest}`
  ? `${WithIndices<Word>}.${WithIndices<Rest>}`
  : Pattern extends keyof Letters
    ? Pattern extends 'NEEDLE'
      ? NeedleName
      : `${number}`
    : Pattern
type IdOf<Kind extends FaultKindName> = WithIndices<Catalogue[Kind]['pattern']>

/** A fault's id, such as `strip.3.seized` or `sweep.worn=0.4`. `readFault` is its only reader. */
export type FaultId = { [Kind in FaultKindName]: IdOf<Kind> | `${IdOf<Kind>}=${number}` }[FaultKindName]

/** What came of reading a fault's id: the fault, perhaps with a remark, or a reason why not. */
export type FaultReading =
  | { readonly kind: 'fault'; readonly fault: Fault; readonly remark: string | null }
  | { readonly kind: 'refused'; readonly reason: string }

/** The first and the last pass whose turn a fault can name. */
const faultPasses = { first: 2, last: 9999 } as const

const isIndex: Readonly<Record<IndexKind, (value: number) => boolean>> = {
  row: (value) => isCardRow(value, mostRows),
  column: isColumn,
  strip: isStrip,
  pass: (value) => Number.isInteger(value) && value >= faultPasses.first && value <= faultPasses.last,
  needle: isNeedle,
}

const isOfKinds = (indices: readonly number[], kinds: readonly IndexKind[]): boolean =>
  indices.length === kinds.length && kinds.every((kind, n) => isIndex[kind](at(indices, n)))

/**
 * A fault of a kind known only when the program runs. `indices` are those of the kind's pattern, in order; `amount` is
 * null for a kind without one. Throws a RangeError where an index or the amount does not fit the kind; an amount
 * outside its range is kept, as tests and trials go beyond it.
 */
export const makeFault = (kind: FaultKindName, indices: readonly number[], amount: number | null): Fault => {
  if (!isOfKinds(indices, indexKindsOf(kind)))
    throw new RangeError(`a fault of kind ${kind} can't be at ${indices.join(', ') || 'no index'}`)
  if ((amount === null) !== (faultKinds[kind].amount === undefined))
    throw new RangeError(`a fault of kind ${kind} can't have the amount ${amount}`)
  return { kind, at: indices, amount } as unknown as Fault
}

const lettersOf = (pattern: string): (keyof Letters | null)[] =>
  pattern.split('.').map((word) => (word in indexKinds ? (word as keyof Letters) : null))

/** What the indices of a kind of fault count, in the order of its pattern. */
export const indexKindsOf = (kind: FaultKindName): IndexKind[] =>
  lettersOf(faultKinds[kind].pattern).flatMap((letters) => (letters === null ? [] : indexKinds[letters]))

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

/** A fault's indices as ids write them, in the order of its pattern: needles by name, all else by number. */
export const indexNames = (fault: Fault): string[] => {
  const kinds = indexKindsOf(fault.kind)
  return fault.at.map((index, n) => (at(kinds, n) === 'needle' ? needleName(toNeedle(index)) : String(index)))
}

/** The id of a fault without its amount, which is the same whatever the amount is. */
export const bareFaultId = (fault: Fault): string => {
  const names = indexNames(fault)
  let n = 0
  return faultKinds[fault.kind].pattern
    .split('.')
    .map((word) => (word in indexKinds ? at(names, n++) : word))
    .join('.')
}

/** The id of a fault in its one canonical form; `readFault` reads it back to the same fault. */
export const faultId = (fault: Fault): FaultId => {
  const { amount } = faultKinds[fault.kind]
  const id = bareFaultId(fault)
  const isUsual = amount?.optional === true && fault.amount === amount.usual
  return (fault.amount === null || isUsual ? id : `${id}=${fault.amount}`) as FaultId
}

/** The part a fault sits in, such as `strip.3`, `catch.R3`, `presser.right`, `card`. */
export const partOfFault = (fault: Fault): PartId => {
  const kind = faultKinds[fault.kind]
  if (fault.kind === 'pawl.skips' || fault.kind === 'pawl.jumps') return `pawl.${sideOfTurn(fault.at[0])}`
  if (kind.part !== null) return kind.part
  const id = `${at(kind.pattern.split('.'), 0)}.${at(indexNames(fault), 0)}`
  const part = parsePart(id)
  if (!part) throw new RangeError(`a fault of kind ${fault.kind} names no part “${id}”`)
  return partId(part)
}

/** Whether a fault is in one hole of the card: its indices are the hole's row and column. */
export const isHoleFault = (fault: Fault): fault is FaultOf<'card.torn' | 'card.blocked'> =>
  fault.kind === 'card.torn' || fault.kind === 'card.blocked'

/** A fault of a strip itself; its index is the strip. */
export type StripFault = FaultOf<'strip.seized' | 'strip.over' | 'strip.slow'>

export const isStripFault = (fault: Fault): fault is StripFault => {
  const { kind } = fault
  return kind === 'strip.seized' || kind === 'strip.over' || kind === 'strip.slow'
}

/** Whether two faults can't both be so: the same part in two states, or one number given twice. */
export const contradict = (one: Fault, other: Fault): boolean => {
  const first = faultKinds[one.kind].excludes
  const second = faultKinds[other.kind].excludes
  const shared = first.some((group) => second.includes(group))
  const mine: readonly number[] = one.at
  const its: readonly number[] = other.at
  return shared && mine.length === its.length && mine.every((index, n) => index === its[n])
}

/** Faults in the order of their ids, numbers by their value: how every list of faults is sorted. */
export const sortedFaults = (faults: readonly Fault[]): Fault[] => sortedByIds(faults, faultId)

/** The faults with one more at their end; what can't be there beside it goes. */
export const withLast = (faults: readonly Fault[], fault: Fault): Fault[] => [
  ...faults.filter((other) => !contradict(other, fault) && faultId(other) !== faultId(fault)),
  fault,
]

/** The faults with one more, sorted; what can't be there beside it goes. */
export const withFault = (faults: readonly Fault[], fault: Fault): Fault[] =>
  sortedFaults(withLast(faults, fault))

/** What is said of two faults that can't both be so, by their names. */
export const contradictionWords = (earlier: string, later: string): string =>
  `${earlier} and ${later} can't both be so; the later, ${later}, counts.`
