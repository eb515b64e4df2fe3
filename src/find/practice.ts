import { type DealtMachine, dealtMachine, type Level } from './deal-machine.ts'
import { machineFaults } from './exhaustive-views.ts'
import { type Letters, lettersOf } from './bed-letters.ts'
import { howCommon } from './how-common.ts'
import { numbersFrom, pickBy } from './seeded.ts'
import { scenarioIn } from './view.ts'
import { type Fault, makeFault } from '../mechanism/fault.ts'
import { faultKinds, type FaultKindName } from '../mechanism/fault-kinds.ts'
import type { Outcome } from '../mechanism/gate.ts'
import { at } from '../mechanism/lookup.ts'
import { type Pass, startRun } from '../mechanism/pass.ts'
import { type CardAndPasses, viewsOfQuery } from './query.ts'

/** A kind that practice breaks, how common it is beside the others, and by how much it breaks it; null for no amount. */
type Dealt = readonly [FaultKindName, number, number | null]

/**
 * What machines to practise on were dealt from when links to them began with `practice`. Such links were given away, so
 * this list stays as it is, whatever becomes of the catalogue and of how common its faults are.
 */
const firstList: readonly Dealt[] = [
  ['card.side', 3, 1.2],
  ['card.skew', 3, 0.12],
  ['card.reversed', 6, null],
  ['card.locked', 6, null],
  ['pawl.right', 3, null],
  ['pawl.left', 3, null],
  ['pawl.double', 1, null],
  ['pin.low', 6, null],
  ['pin.high', 3, null],
  ['pin.over', 2, null],
  ['sweep.worn', 2, 0.8],
  ['belt.timing', 5, 3],
  ['belt.slack', 3, 2],
  ['rocker.dead', 1, null],
  ['rocker.worn', 2, 0.8],
  ['strip.seized', 10, null],
  ['strip.over', 4, null],
  ['strip.slow', 10, 300],
  ['catch.broken', 2, null],
  ['needle.bent', 6, null],
  ['needle.gone', 3, null],
  ['presser.right.worn', 1, 0.8],
  ['presser.left.worn', 1, 0.8],
  ['needle.stiff', 6, 50],
  ['retainer.worn', 20, 12],
  ['gate.1.low', 0.5, 0.5],
  ['gate.1.high', 0.5, 0.5],
]

/** What is dealt today: every kind that is part of the machine, not a card's own holes or a certain turn. */
const todaysList = (faults: readonly Fault[]): Dealt[] =>
  [...new Set(faults.map(({ kind }) => kind))].map((kind) => [
    kind,
    howCommon[kind],
    faultKinds[kind].amount?.usual ?? null,
  ])

/** The fault of a seed: its kind as often as it is common, then any of its numbers. */
const dealtFrom = (list: readonly Dealt[], faults: readonly Fault[], seed: number): Fault => {
  const next = numbersFrom(seed)
  const [chosen, , amount] = pickBy(list, ([, weight]) => weight, next)
  const places = faults.filter(({ kind }) => kind === chosen)
  const fault = at(places, Math.floor(next() * places.length))
  return makeFault(chosen, fault.at, amount)
}

/** The machine of a link with `practice=SEED`: what it dealt when it was given away. */
export const practiceFault = (seed: number): Fault => dealtFrom(firstList, machineFaults(), seed)

/** The machine of a link with `deal=SEED`, among every kind that there is today. */
export const dealtFault = (seed: number): Fault => {
  const faults = machineFaults()
  return dealtFrom(todaysList(faults), faults, seed)
}

/** The machine that is practised on, by the seeds and the level of a session's link; null where it is a real one. */
export const practisedMachine = ({
  practice,
  deal,
  level,
}: {
  readonly practice: number | null
  readonly deal: number | null
  readonly level: Level
}): DealtMachine | null => {
  if (deal !== null) return dealtMachine(deal, level, dealtFault)
  return practice === null ? null : dealtMachine(practice, 1, practiceFault)
}

const passesWith = (query: CardAndPasses, { faults, wear, seed }: DealtMachine): Pass[] =>
  viewsOfQuery(query).map((view) => startRun({ ...scenarioIn(view, faults), wear, seed }).passOf(view.pass))

/** How the beds of a query's passes come out on a machine, by pass and needle. */
export const outcomesWith = (query: CardAndPasses, machine: DealtMachine): (readonly Outcome[])[] =>
  passesWith(query, machine).map(({ came }) => came)

/** The same as letters, as somebody would note them without a slip. */
export const needlesWith = (query: CardAndPasses, machine: DealtMachine): Letters[] =>
  passesWith(query, machine).map(lettersOf)

/** A fault shows where mending it alone would change at least so many notes. */
const leastShown = 3

/** Those faults of a machine that show in a query's passes. */
export const shownFaults = (query: CardAndPasses, machine: DealtMachine): Fault[] => {
  const beds = needlesWith(query, machine)
  return machine.faults.filter((fault) => {
    const mended = needlesWith(query, {
      ...machine,
      faults: machine.faults.filter((other) => other !== fault),
    })
    const changed = beds.reduce(
      (count, bed, n) =>
        count + Array.from(bed).filter((letter, needle) => letter !== mended[n]?.[needle]).length,
      0,
    )
    return changed >= leastShown
  })
}
