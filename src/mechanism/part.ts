import { needleIndex, type NeedleName, needleName, type Side, sides } from './bed.ts'
import { bedLengths, type Column, isColumn, isStrip, type Needle, type Strip } from './indices.ts'

/** Parts of which the machine has one. */
const onlyOnes = ['card', 'turn', 'lever', 'sweep', 'belt', 'pivots', 'retainer', 'carriage'] as const
const gates = [1, 2] as const

/** The gates that sort the needles: the first stops butts that sprang up, the second those that stayed down. */
type GateNumber = (typeof gates)[number]

/** A part of the machine, told apart by its kind. `side` is null where both sides are meant. */
export type Part =
  | { readonly kind: (typeof onlyOnes)[number] }
  | { readonly kind: 'pawl' | 'presser'; readonly side: Side | null }
  | { readonly kind: 'pin' | 'rocker'; readonly column: Column }
  | { readonly kind: 'strip'; readonly strip: Strip }
  | { readonly kind: 'catch' | 'needle'; readonly needle: Needle }
  | { readonly kind: 'gate'; readonly gate: GateNumber }

export type PartKind = Part['kind']

/** A part's id, such as `strip.3`, `catch.R3`, `presser.right`, `card`: traces, drawings and words name parts by it. */
export type PartId =
  | (typeof onlyOnes)[number]
  | 'pawl'
  | 'presser'
  | `${'pawl' | 'presser'}.${Side}`
  | `${'pin' | 'rocker' | 'strip'}.${number}`
  | `${'catch' | 'needle'}.${NeedleName}`
  | `gate.${GateNumber}`

/** A whole number from 1 as ids write it, without noughts in front; NaN for any other text. */
const readWhole = (text: string): number => (/^[1-9]\d{0,3}$/.test(text) ? Number(text) : NaN)

/** The part that an id names; null where there is no such part. The only reader of part ids. */
export const parsePart = (id: string): Part | null => {
  const dot = id.indexOf('.')
  const kind = dot < 0 ? id : id.slice(0, dot)
  const which = dot < 0 ? null : id.slice(dot + 1)
  if (which === null) {
    const only = onlyOnes.find((name) => name === kind)
    if (only) return { kind: only }
    return kind === 'pawl' || kind === 'presser' ? { kind, side: null } : null
  }
  const number = readWhole(which)
  switch (kind) {
    case 'pawl':
    case 'presser': {
      const side = sides.find((name) => name === which)
      return side ? { kind, side } : null
    }
    case 'pin':
    case 'rocker':
      return isColumn(number) ? { kind, column: number } : null
    case 'strip':
      return isStrip(number) ? { kind, strip: number } : null
    case 'catch':
    case 'needle': {
      const needle = needleIndex(which, bedLengths.most)
      return needle === null ? null : { kind, needle }
    }
    case 'gate': {
      const gate = gates.find((each) => each === number)
      return gate ? { kind, gate } : null
    }
    default:
      return null
  }
}

/** The words of an id as they sort: numbers by their value, needles from the left end of the bed. */
type SortKey = readonly (string | number)[]

const sortKey = (id: string): SortKey => {
  const [name = '', amount] = id.split('=')
  const words = name
    .split('.')
    .map((word) => (/^\d+$/.test(word) ? Number(word) : (needleIndex(word, bedLengths.most) ?? word)))
  return amount === undefined ? words : [...words, Number(amount)]
}

const compareKeys = (one: SortKey, other: SortKey): number => {
  for (const [n, word] of one.entries()) {
    const against = other[n]
    if (against === undefined) return 1
    if (word === against) continue
    if (typeof word === 'number' && typeof against === 'number') return word - against
    return String(word) < String(against) ? -1 : 1
  }
  return one.length - other.length
}

/**
 * Sorts what has an id of a part or of a fault: by the id's words, but numbers by their value and needles from the left
 * end of the bed, so that `pin.2` is before `pin.10` and `needle.L3.bent` before `needle.R1.bent`.
 */
export const sortedByIds = <Item>(items: readonly Item[], idOf: (item: Item) => string): Item[] =>
  items
    .map((item) => ({ item, key: sortKey(idOf(item)) }))
    .sort((one, other) => compareKeys(one.key, other.key))
    .map(({ item }) => item)

/** The part of an id that is known to name one. Throws a RangeError where it names none, such as `pin.25`. */
export const partOf = (id: PartId): Part => {
  const part = parsePart(id)
  if (!part) throw new RangeError(`there is no part “${id}”`)
  return part
}

/** A part's id; `parsePart` reads it back to the same part. */
export const partId = (part: Part): PartId => {
  switch (part.kind) {
    case 'pawl':
    case 'presser':
      return part.side === null ? part.kind : `${part.kind}.${part.side}`
    case 'pin':
    case 'rocker':
      return `${part.kind}.${part.column}`
    case 'strip':
      return `strip.${part.strip}`
    case 'catch':
    case 'needle':
      return `${part.kind}.${needleName(part.needle)}`
    case 'gate':
      return `gate.${part.gate}`
    case 'card':
    case 'turn':
    case 'lever':
    case 'sweep':
    case 'belt':
    case 'pivots':
    case 'retainer':
    case 'carriage':
      return part.kind
  }
}
