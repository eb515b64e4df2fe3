import { machineFaults } from './everything.ts'
import { type Letters, lettersOf } from './evidence.ts'
import { common } from './priors.ts'
import { scenarioIn } from './view.ts'
import { type Fault, makeFault } from '../mechanism/fault.ts'
import { faultKinds, type FaultKindName } from '../mechanism/fault-kinds.ts'
import type { Outcome } from '../mechanism/gate.ts'
import { at, lastOf } from '../mechanism/lookup.ts'
import { type Pass, startRun } from '../mechanism/pass.ts'
import { type CardAndPasses, viewsOfQuery } from './query.ts'

/** Numbers from 0 to 1 that follow from a seed, one after the other (a counter through a 32-bit mixing step). */
const numbersFrom = (seed: number): (() => number) => {
  let state = seed >>> 0
  return () => {
    state = (state + 0x9e3779b9) >>> 0
    let mixed = Math.imul(state ^ (state >>> 16), 0x85ebca6b)
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35)
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 0x100000000
  }
}

/** The kinds that practice breaks: parts of the machine, not a card's own holes or a certain turn. */
const kindsOf = (faults: readonly Fault[]): FaultKindName[] => [...new Set(faults.map(({ kind }) => kind))]

/** The fault of a seed: its kind as often as it is common, then any of its numbers, by its usual amount. */
export const practiceFault = (seed: number): Fault => {
  const next = numbersFrom(seed)
  const faults = machineFaults()
  const kinds = kindsOf(faults)
  let left = next() * kinds.reduce((sum, kind) => sum + common[kind], 0)
  const chosen = kinds.find((kind) => (left -= common[kind]) < 0) ?? lastOf(kinds)
  const places = faults.filter(({ kind }) => kind === chosen)
  const fault = at(places, Math.floor(next() * places.length))
  return makeFault(chosen, fault.at, faultKinds[chosen].amount?.usual ?? null)
}

const passesWith = (query: CardAndPasses, fault: Fault): Pass[] =>
  viewsOfQuery(query).map((view) => startRun(scenarioIn(view, [fault])).passOf(view.pass))

/** How the beds of a query's passes come out on a machine with this fault and no other, by pass and needle. */
export const outcomesWith = (query: CardAndPasses, fault: Fault): (readonly Outcome[])[] =>
  passesWith(query, fault).map(({ came }) => came)

/** The same as letters, as somebody would note them without a slip. */
export const needlesWith = (query: CardAndPasses, fault: Fault): Letters[] =>
  passesWith(query, fault).map(lettersOf)
