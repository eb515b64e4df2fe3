import { needleIndex, needleName } from './bed.ts'
import { mostRows } from './card.ts'
import { dimensions } from './dimensions.ts'
import { type Amount, faultKinds, type FaultKindName, type IndexKind } from './fault-kinds.ts'
import { at } from './lookup.ts'
import { parsePart, type PartId, partId } from './part.ts'

/** One thing wrong with the machine. */
export interface Fault {
  readonly kind: FaultKindName
  /** The numbers in the kind's pattern, in order: rows, columns, strips, passes from 1; needles as indexes from 0. */
  readonly at: readonly number[]
  /** How much, in the kind's unit; null where the kind has no amount. */
  readonly amount: number | null
}

/** What came of reading a fault's id: the fault, perhaps with a remark, or a reason why not. */
export type FaultReading =
  | { readonly fault: Fault; readonly remark: string | null }
  | { readonly fault: null; readonly reason: string }

const placeRange: Record<Exclude<IndexKind, 'needle'>, readonly [number, number]> = {
  row: [1, mostRows],
  column: [1, dimensions.columns],
  strip: [1, dimensions.strips],
  pass: [2, 9999],
}

const placeLetters: Readonly<Record<string, IndexKind>> = {
  ROW: 'row',
  COL: 'column',
  C: 'column',
  J: 'strip',
  P: 'pass',
  NEEDLE: 'needle',
}

const names = Object.keys(faultKinds) as FaultKindName[]

/** The places a kind of fault names, in the order of its pattern. */
export const indexKindsOf = (kind: FaultKindName): IndexKind[] =>
  faultKinds[kind].pattern.split('.').flatMap((word) => placeLetters[word] ?? [])

const readPlace = (place: IndexKind, text: string): number | null => {
  if (place === 'needle') return needleIndex(text)
  if (!/^[1-9]\d{0,3}$/.test(text)) return null
  const [least, most] = placeRange[place]
  const value = Number(text)
  return value >= least && value <= most ? value : null
}

/** Why a place could not be read, as the end of a sentence. */
const placeTrouble = (place: IndexKind, text: string): string =>
  place === 'needle'
    ? `there is no needle ${text}; they run from ${needleName(0)} to ${needleName(dimensions.needles - 1)}`
    : `there is no ${place} ${text}; they run from ${placeRange[place][0]} to ${placeRange[place][1]}`

/** Numbers are read to four decimals, finer than anyone measures here. */
const decimals = 4

/** Rounds to the four decimals that links and ids keep. */
export const roundNumber = (value: number): number => Math.round(value * 10 ** decimals) / 10 ** decimals + 0

/** A plain decimal number, rounded to four decimals; null where the text is none. */
export const readNumber = (text: string): number | null =>
  /^[+-]?(\d{1,40}(\.\d{0,40})?|\.\d{1,40})$/.test(text) ? roundNumber(Number(text)) : null

const readAmount = (amount: Amount, text: string): { value: number; remark: string | null } | string => {
  const value = readNumber(text)
  if (value === null) return `“${text}” is not a number`
  const clamped = Math.min(amount.most, Math.max(amount.least, value))
  if (clamped === value) return { value, remark: null }
  const range = `${amount.least} to ${amount.most} ${amount.unit}`
  return { value: clamped, remark: `${text} is outside ${range}, so ${clamped} stands` }
}

/**
 * Reads a fault's id as mechanism words it: `strip.3.seized`, `sweep.worn=0.4`.
 * Never throws; says in words what could not be read or was changed.
 */
export const readFault = (id: string): FaultReading => {
  const equals = id.indexOf('=')
  const words = (equals < 0 ? id : id.slice(0, equals)).split('.')
  const amountText = equals < 0 ? null : id.slice(equals + 1)
  const kind = names.find((name) => {
    const pattern = faultKinds[name].pattern.split('.')
    return pattern.length === words.length && pattern.every((w, n) => w in placeLetters || w === words[n])
  })
  if (!kind) return { fault: null, reason: 'no such fault is known' }
  const pattern = faultKinds[kind].pattern.split('.')
  const indices: number[] = []
  for (const [n, word] of words.entries()) {
    const place = placeLetters[pattern[n] ?? '']
    if (!place) continue
    const value = readPlace(place, word)
    if (value === null) return { fault: null, reason: placeTrouble(place, word) }
    indices.push(value)
  }
  const { amount } = faultKinds[kind]
  if (!amount)
    return amountText === null
      ? { fault: { kind, at: indices, amount: null }, remark: null }
      : { fault: null, reason: 'this fault takes no number' }
  if (amountText === null)
    return amount.optional
      ? { fault: { kind, at: indices, amount: amount.usual }, remark: null }
      : { fault: null, reason: `it needs a number, such as ${id}=${amount.usual}` }
  const reading = readAmount(amount, amountText)
  return typeof reading === 'string'
    ? { fault: null, reason: reading }
    : { fault: { kind, at: indices, amount: reading.value }, remark: reading.remark }
}

/** The id of a fault in its one canonical form; `readFault` reads it back to the same fault. */
export const faultId = (fault: Fault): string => {
  const places = indexKindsOf(fault.kind)
  let n = 0
  const id = faultKinds[fault.kind].pattern
    .split('.')
    .map((word) => {
      if (!(word in placeLetters)) return word
      const value = fault.at[n] ?? 0
      return places[n++] === 'needle' ? needleName(value) : String(value)
    })
    .join('.')
  const { amount } = faultKinds[fault.kind]
  if (!amount || fault.amount === null || (amount.optional && fault.amount === amount.usual)) return id
  return `${id}=${fault.amount}`
}

/** The part a fault sits in, such as `strip.3`, `catch.R3`, `presser.right`, `card`. */
export const partOfFault = (fault: Fault): PartId => {
  const kind = faultKinds[fault.kind]
  if (kind.part !== null) return kind.part
  const [index] = indexKindsOf(fault.kind)
  const value = at(fault.at, 0)
  const name = at(kind.pattern.split('.'), 0)
  const id = `${name}.${index === 'needle' ? needleName(value) : value}`
  const part = parsePart(id)
  if (!part) throw new RangeError(`a fault of kind ${fault.kind} names no part “${id}”`)
  return partId(part)
}

/** Whether two faults can't both be so: the same part in two states, or one number given twice. */
export const contradict = (one: Fault, other: Fault): boolean => {
  const first = faultKinds[one.kind].excludes
  const second = faultKinds[other.kind].excludes
  const shared = first.some((group) => second.includes(group))
  return shared && one.at.length === other.at.length && one.at.every((value, n) => value === other.at[n])
}

/** The faults with one more, which comes last; what can't be there beside it goes. */
export const withFault = (faults: readonly Fault[], fault: Fault): Fault[] => [
  ...faults.filter((other) => !contradict(other, fault) && faultId(other) !== faultId(fault)),
  fault,
]
