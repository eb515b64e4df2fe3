import fc from 'fast-check'
import { type Bed, toBed, usualPlace, wholeBedOf } from '@/mechanism/bed.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { type Fault, indexKindsOf, makeFault } from '@/mechanism/fault.ts'
import { type FaultKindName, faultKinds, type IndexKind } from '@/mechanism/fault-kinds.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { roundNumber } from '@/mechanism/number.ts'
import {
  canonicalOwn,
  dimensionsOf,
  disordered,
  nothingOwn,
  type Own,
  ownDimensions,
  type OwnName,
  ownNames,
} from '@/mechanism/own.ts'
import type { Scenario } from '@/mechanism/scenario.ts'

export const kinds = Object.keys(faultKinds) as FaultKindName[]

export const rows = fc.integer({ min: 0, max: 0xffffff })
export const cards = fc.array(rows, { minLength: 1, maxLength: 9 })
export const cardsOrNone = fc.option(cards, { freq: 9 })
export const speeds = fc.integer({ min: 50, max: 2000 })
export const passes = fc.integer({ min: 1, max: 9 })
export const columns = fc.integer({ min: 1, max: 24 })
export const strips = fc.integer({ min: 1, max: 8 })
export const needles = fc.integer({ min: 0, max: 199 }).map(toNeedle)
export const ways = fc.constantFrom(1 as const, -1 as const)

/** How many needles a bed may have. */
export const bedLengths = fc.integer({ min: 30, max: 125 }).map((half) => 2 * half)

/** Needles in use on a bed of so many. */
export const bedsWithin = (length: number): fc.Arbitrary<Bed> => {
  const { first, last } = wholeBedOf(length)
  const needle = fc.integer({ min: first, max: last })
  return fc
    .tuple(needle, needle)
    .map(([one, other]) => toBed({ first: Math.min(one, other), last: Math.max(one, other) }))
}

export const beds = bedsWithin(dimensions.needles)

const places: Record<IndexKind, fc.Arbitrary<number>> = {
  row: fc.integer({ min: 1, max: 9 }),
  column: columns,
  strip: strips,
  pass: fc.integer({ min: 2, max: 9 }),
  needle: needles,
}

const amounts = (kind: FaultKindName): fc.Arbitrary<number | null> => {
  const { amount } = faultKinds[kind]
  if (!amount) return fc.constant(null)
  const per = Math.round(1 / amount.step)
  return fc
    .integer({ min: Math.round(amount.least * per), max: Math.round(amount.most * per) })
    .map((steps) => steps / per)
}

/** Any fault of one kind. */
export const faultOf = (kind: FaultKindName): fc.Arbitrary<Fault> =>
  fc
    .tuple(fc.tuple(...indexKindsOf(kind).map((place) => places[place])), amounts(kind))
    .map(([indices, amount]) => makeFault(kind, indices, amount))

/** Any fault of these kinds. */
export const faultAmong = (among: readonly FaultKindName[]): fc.Arbitrary<Fault> =>
  fc.constantFrom(...among).chain(faultOf)

/** Any faults at once, contradictions included; `among` limits their kinds. */
export const faultsAmong = (among: readonly FaultKindName[], most: number): fc.Arbitrary<Fault[]> =>
  fc.array(faultAmong(among), { maxLength: most })

/** The kinds without some. */
export const without = (...left: readonly FaultKindName[]): FaultKindName[] =>
  kinds.filter((kind) => !left.includes(kind))

/** The training machine's value of a dimension, or up to a third more or less, within what may be measured. */
const ownValue = (name: OwnName): fc.Arbitrary<number> => {
  const { least, most } = ownDimensions[name]
  return fc
    .double({ min: 0.7, max: 1.35, noNaN: true })
    .map((share) => Math.min(most, Math.max(least, roundNumber(share * dimensions[name]))))
}

/** Some values of a machine that somebody measured, the length of its bed among them where that may be. */
const ownsWith = (lengths: fc.Arbitrary<number | undefined>): fc.Arbitrary<Own> =>
  fc
    .record(
      {
        ...(Object.fromEntries(ownNames.map((name) => [name, ownValue(name)])) as Record<
          OwnName,
          fc.Arbitrary<number>
        >),
        needles: lengths,
      },
      { requiredKeys: [] },
    )
    .map(({ needles: length, ...values }): Own =>
      length === undefined ? values : { ...values, needles: length },
    )
    .filter((own) => disordered(own).length === 0)
    .map(canonicalOwn)

export const owns = ownsWith(bedLengths)

/** The same of machines with a bed as long as the training machine's. */
export const ownsOfUsualBed = ownsWith(fc.constant(undefined))

/** Any scenario within the model's ranges. */
export const scenarios = ({
  bed,
  ...parts
}: Partial<{ [key in keyof Scenario]: fc.Arbitrary<Scenario[key]> }> = {}): fc.Arbitrary<Scenario> =>
  fc
    .record({
      card: cardsOrNone,
      faults: faultsAmong(kinds, 6),
      speed: speeds,
      wear: fc.constantFrom(0, 0, 0.25, 0.5, 0.8, 1),
      seed: fc.integer({ min: 0, max: 0xffffffff }),
      own: fc.oneof(
        { arbitrary: fc.constant(nothingOwn), weight: 3 },
        { arbitrary: bed ? ownsOfUsualBed : owns, weight: 1 },
      ),
      columnOne: fc.oneof(fc.constant(usualPlace.columnOne), needles),
      ...parts,
    })
    .chain((rest) => {
      const length = dimensionsOf(rest.own).needles
      const inUse = bed ?? fc.oneof(fc.constant(wholeBedOf(length)), bedsWithin(length))
      return inUse.map((chosen) => ({ ...rest, bed: chosen }))
    })
