// The machinery of every link: a table with one row a field, and one walk over it each to read and to write.

import { at, entry, lastOf } from '../mechanism/lookup.ts'
import type { CardLibrary } from './state.ts'
import { quote, type Trouble, Troubles } from './troubles.ts'

/** One key of a link with its value, as a text. */
export type Pair = readonly [key: string, value: string]

/** Gives the other fields of what is read or written, for a field whose meaning depends on them. */
export type Others<Whole> = <Field extends keyof Whole>(field: Field) => Whole[Field]

/** What a row has at hand while it reads. */
export interface Reading<Value, Whole> {
  /** What the field is where its keys are missing. */
  readonly usual: Value
  readonly others: Others<Whole>
  readonly library: CardLibrary
  /** Where to say what was left out or changed. */
  readonly troubles: Troubles
}

/** How one field of a whole is read from a link and written to it. */
export interface Row<Value, Whole> {
  readonly keys: readonly string[]
  /** Whether every value of a key counts; otherwise the last does, and two different ones are said. */
  readonly isList?: true
  /** Whether the field is written even where it is as usual. */
  readonly isAlwaysWritten?: true
  /** What the field is where its keys are missing. */
  readonly usual: (others: Others<Whole>, library: CardLibrary) => Value
  /** The field from the link's pairs of these keys, at least one, in the link's own order. Never throws. */
  readonly parse: (pairs: readonly Pair[], reading: Reading<Value, Whole>) => Value
  /** The pairs that `parse` reads back to this value. */
  readonly write: (value: Value, library: CardLibrary) => readonly Pair[]
}

/** A row for each field, in the order in which links have them. */
export type Table<Whole> = { readonly [Field in keyof Whole]: Row<Whole[Field], Whole> }

/** A row of one key of which the last value counts. */
export const oneValue = <Value, Whole>(
  key: string,
  row: {
    readonly isAlwaysWritten?: true
    readonly usual: Row<Value, Whole>['usual']
    readonly parse: (text: string, reading: Reading<Value, Whole>) => Value
    readonly write: (value: Value, library: CardLibrary) => string
  },
): Row<Value, Whole> => ({
  ...row,
  keys: [key],
  parse: (pairs, reading) => row.parse(lastOf(pairs)[1], reading),
  write: (value, library) => [[key, row.write(value, library)]],
})

/** The fields of a table, in its order. */
const fieldsOf = <Whole>(table: Table<Whole>): (keyof Whole)[] => Object.keys(table) as (keyof Whole)[]

/** Says what keys of a link no row has. */
export type SayStrangers = (strangers: readonly Pair[], troubles: Troubles) => void

/** A whole address of a page, or the part of one before its `#`: nothing that a link's own text has. */
const addressBefore = /^\s*(?:[a-z][a-z\d+.-]*:\/\/[^#]*|[^#=&]*\/[^#]*)#/i

/**
 * The link's own text of what somebody gave as a link: without its `#` or `?`, and of a page's whole address what comes
 * after the `#`. That an address has nothing there is said in `troubles`.
 */
const linkTextIn = (text: string, troubles: Troubles): string => {
  const [address] = addressBefore.exec(text) ?? []
  if (address !== undefined) return text.slice(address.length).trimEnd()
  if (!/^\s*(?:https?|file):\/\//i.test(text)) return text.replace(/^[#?]/, '')
  troubles.leftOut(
    'address',
    `The address ${quote(text.trim())} has nothing after a “#”, so it says nothing about a machine.`,
  )
  return ''
}

/** The pairs of a link's text (with or without its `#` or `?`) by the field whose row has their key. */
const pairsOf = <Whole>(
  text: string,
  table: Table<Whole>,
  sayStrangers: SayStrangers,
  troubles: Troubles,
): ReadonlyMap<keyof Whole, readonly Pair[]> => {
  const fieldOf = new Map(
    fieldsOf(table).flatMap((field) => table[field].keys.map((key) => [key, field] as const)),
  )
  const pairs = new Map<keyof Whole, Pair[]>()
  const repeated = new Set<keyof Whole>()
  const strangers: Pair[] = []
  for (const pair of new URLSearchParams(linkTextIn(text, troubles))) {
    const field = fieldOf.get(pair[0])
    if (field === undefined) {
      strangers.push(pair)
      continue
    }
    const before = pairs.get(field)
    if (!before) pairs.set(field, [pair])
    else {
      if (!table[field].isList && lastOf(before)[1] !== pair[1]) repeated.add(field)
      before.push(pair)
    }
  }
  for (const field of repeated) {
    const [key, value] = lastOf(entry(pairs, field))
    troubles.changed(
      'repeated key',
      `The link gives “${key}” more than once; the last, ${quote(value)}, counts.`,
    )
  }
  sayStrangers(strangers, troubles)
  return pairs
}

/**
 * Reads a link's text (with or without its `#` or `?`) by a table. Never throws and always gives every field; what is
 * left out or changed is said in `troubles`. A field that others depend on is read with the first of them.
 */
export const readTable = <Whole extends object>(
  text: string,
  table: Table<Whole>,
  library: CardLibrary,
  sayStrangers: SayStrangers,
): { readonly whole: Whole; readonly troubles: readonly Trouble[] } => {
  const troubles = new Troubles()
  const pairs = pairsOf(text, table, sayStrangers, troubles)
  const whole: Partial<Whole> = {}
  const others: Others<Whole> = (field) => {
    if (!(field in whole)) {
      const row = table[field]
      const usual = row.usual(others, library)
      const own = pairs.get(field)
      whole[field] = own ? row.parse(own, { usual, others, library, troubles }) : usual
    }
    return (whole as Whole)[field]
  }
  for (const field of fieldsOf(table)) others(field)
  return { whole: whole as Whole, troubles: troubles.all }
}

const areSame = (some: readonly Pair[], others: readonly Pair[]): boolean =>
  some.length === others.length &&
  some.every(([key, value], n) => {
    const [otherKey, otherValue] = at(others, n)
    return key === otherKey && value === otherValue
  })

/** Writes a whole in the one canonical form of its table: in the table's order, and without what is as usual. */
export const writeTable = <Whole>(
  whole: NoInfer<Whole>,
  table: Table<Whole>,
  library: CardLibrary,
): string => {
  const others: Others<Whole> = (field) => whole[field]
  const pairs = fieldsOf(table).flatMap((field) => {
    const row = table[field]
    const own = row.write(whole[field], library)
    if (row.isAlwaysWritten) return own
    return areSame(own, row.write(row.usual(others, library), library)) ? [] : own
  })
  return new URLSearchParams(pairs.map(([key, value]) => [key, value])).toString()
}
