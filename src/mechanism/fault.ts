import { type NeedleName, needleName, sideOfTurn } from './bed.ts'
import { mostRows } from './card.ts'
import { type Catalogue, type FaultKindName, faultKinds, type IndexKind, indexKinds } from './fault-kinds.ts'
import {
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
import { parsePart, type PartId, partId } from './part.ts'

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

/** The first and the last pass whose turn a fault can name. */
export const faultPasses = { first: 2, last: 9999 } as const

/** Whether a number is an index of its kind. */
export const isIndex: Readonly<Record<IndexKind, (value: number) => boolean>> = {
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

/** The words of a kind's pattern: which index each is the place of, null for a word that is written as it is. */
export const lettersOf = (pattern: string): (keyof Letters | null)[] =>
  pattern.split('.').map((word) => (word in indexKinds ? (word as keyof Letters) : null))

const kindsOfIndices = new Map<FaultKindName, readonly IndexKind[]>()

/** What the indices of a kind of fault count, in the order of its pattern. */
export const indexKindsOf = (kind: FaultKindName): readonly IndexKind[] => {
  let kinds = kindsOfIndices.get(kind)
  if (!kinds) {
    const letters = lettersOf(faultKinds[kind].pattern).filter((word) => word !== null)
    kindsOfIndices.set(kind, (kinds = letters.map((word) => indexKinds[word])))
  }
  return kinds
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
