import { type CardPlace, stripOfColumn, stripOfNeedle } from '../mechanism/bed.ts'
import { hasHole } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { type Fault, indexKindsOf, makeFault } from '../mechanism/fault.ts'
import { type FaultKindName, faultKindNames, faultKinds, type IndexKind } from '../mechanism/fault-kinds.ts'
import {
  allColumns,
  type CardRow,
  type Needle,
  type Strip,
  toColumn,
  toNeedle,
  toStrip,
} from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import { bitsDue } from './sound.ts'
import { needlesAt } from './bed-needles.ts'
import { rowDue, type View } from './view.ts'

/**
 * The amounts by which faults are tried, for kinds where the usual one is not enough: a repairer meets them so, and
 * between them lie the speeds and the places at which what is seen changes. The sign of a skew can't be seen.
 */
const amounts: Partial<Record<FaultKindName, readonly number[]>> = {
  'card.side': [1.2, -1.2],
  'card.skew': [0.09, 0.12, 0.2, 0.4],
  'belt.timing': [0.9, -0.9, 3, -3, 8, -8],
  'belt.slack': [2, 16],
  'strip.slow': [150, 300, 1000],
  'needle.stiff': [10, 50],
  'retainer.worn': [6, 8, 12, 25],
}

/**
 * How far a fault's effects go: the row that is read, the whole bed, each needle by chance, one strip's needles, or
 * one needle.
 */
export type Reach =
  | { readonly of: 'row' | 'bed' | 'chance' }
  | { readonly of: 'strip'; readonly strip: Strip }
  | { readonly of: 'needle'; readonly needle: Needle; readonly strip: Strip }

const rowKinds: readonly FaultKindName[] = [
  'card.locked',
  'pawl.right',
  'pawl.left',
  'pawl.double',
  'pawl.skips',
  'pawl.jumps',
  'turn.short',
  'turn.twice',
]

/**
 * Kinds that come and go: what they show differs from pass to pass, so that no list of what a machine shows can have
 * them.
 */
const fleeting: readonly FaultKindName[] = ['pin.sticky', 'pivots.loose']

/** How far a fault's effects go on a machine that is sound but for it, with the card at a place along the bed. */
export const reachOf = (fault: Fault, card: CardPlace): Reach => {
  const { kind } = fault
  const [place] = indexKindsOf(kind)
  if (rowKinds.includes(kind)) return { of: 'row' }
  if (kind === 'retainer.worn') return { of: 'chance' }
  if (place === undefined) return { of: 'bed' }
  const first = at<number>(fault.at, 0)
  if (place === 'needle')
    return { of: 'needle', needle: toNeedle(first), strip: stripOfNeedle(toNeedle(first), card) }
  if (place === 'strip') return { of: 'strip', strip: toStrip(first) }
  if (place === 'column') return { of: 'strip', strip: stripOfColumn(toColumn(first)) }
  if (place === 'row') return { of: 'strip', strip: stripOfColumn(toColumn(at<number>(fault.at, 1))) }
  return { of: 'bed' }
}

const upTo = (count: number, first = 1): number[] => Array.from({ length: count }, (_, n) => n + first)

const numbersOf: Readonly<Record<Exclude<IndexKind, 'row' | 'pass' | 'needle'>, readonly number[]>> = {
  column: upTo(dimensions.columns),
  strip: upTo(dimensions.strips),
}

/** The card's own faults in the rows that are looked at: a hole can only be blocked, and card only torn. */
const cardFaults = (views: readonly View[]): Fault[] => {
  const rows = new Map<CardRow, number>()
  for (const view of views) {
    const row = rowDue(view)
    if (row !== null) rows.set(row, bitsDue(view)!)
  }
  return [...rows].flatMap(([row, bits]) =>
    allColumns.map((column): Fault => {
      const kind = hasHole(bits, column) ? 'card.blocked' : 'card.torn'
      return { kind, at: [row, column], amount: null }
    }),
  )
}

/** Every fault of a kind: each of its numbers with each of its amounts. */
const faultsOf = (kind: FaultKindName, views: readonly View[], needles: readonly Needle[]): Fault[] => {
  const [place] = indexKindsOf(kind)
  if (place === 'row') return []
  const usual = faultKinds[kind].amount?.usual ?? null
  const lastPass = Math.max(1, ...views.map(({ pass }) => pass))
  const numbers = (of: Exclude<IndexKind, 'row'>): readonly number[] =>
    of === 'pass' ? upTo(lastPass - 1, 2) : of === 'needle' ? needles : numbersOf[of]
  const places = place === undefined ? [[]] : numbers(place).map((n) => [n])
  return places.flatMap((indices) =>
    (amounts[kind] ?? [usual]).map((amount) => makeFault(kind, indices, amount)),
  )
}

/**
 * Every single fault that is considered where these views are looked at, in the chain's order: every number of every
 * part, the card's holes in the rows looked at, and short turns up to the last pass.
 */
export const entriesFor = (views: readonly View[], machine: Pick<View, 'own'> = views[0] ?? {}): Fault[] => {
  const needles = needlesAt(machine)
  const kinds = faultKindNames.filter((kind) => !fleeting.includes(kind))
  return [...cardFaults(views), ...kinds.flatMap((kind) => faultsOf(kind, views, needles))]
}
