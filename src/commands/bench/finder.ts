import { performance } from 'node:perf_hooks'
import { cpuUsage } from 'node:process'
import type { Finding } from '../../find/finding.ts'
import { placeOfFault } from '../../find/place.ts'
import type { Query } from '../../find/query.ts'
import { drawsOf } from './draws.ts'
import { machinesOf } from './machine.ts'
import type { Tried } from './measures.ts'
import { notedBeds, queryOf } from './notes.ts'
import { allSeized, namesAllWhereNothing, stripSets } from './strip-sets.ts'
import { bedsOf, truthOf } from './truth.ts'

/** What says what may be wrong. */
export type Finder = (query: Query) => Finding

/** The query with one needle noted otherwise: what a person changes by a tap. */
const withOneMark = (query: Query): Query => {
  const [first, ...others] = query.passes
  if (!first) return query
  const needles = (first.needles.startsWith('s') ? 'p' : 's') + first.needles.slice(1)
  return { ...query, passes: [{ ...first, needles }, ...others] }
}

/** How long something took, in milliseconds: by the clock, and of the processor's time, which other programs do not lengthen. */
export interface Took {
  readonly clock: number
  readonly processor: number
}

const timed = <Result>(work: () => Result): { result: Result; took: Took } => {
  const [start, used] = [performance.now(), cpuUsage()]
  const result = work()
  const { user, system } = cpuUsage(used)
  return { result, took: { clock: performance.now() - start, processor: (user + system) / 1000 } }
}

/** What a finder says of a bench of machines, and how long each answer took it. */
export interface BenchRun {
  readonly tried: readonly Tried[]
  /** The first answer for a machine, and that after one mark was changed. */
  readonly times: { readonly first: readonly Took[]; readonly oneMark: readonly Took[] }
}

/** Tries a finder on so many machines of the bench of a seed, noted with a slip now and then. */
export const tryFinder = (finder: Finder, seed: number, count: number): BenchRun => {
  const slipDraws = drawsOf(seed * 1_000_000 + 999_999)
  const first: Took[] = []
  const oneMark: Took[] = []
  const tried = machinesOf(seed, count).map((machine): Tried => {
    const query = queryOf(machine, notedBeds(bedsOf(machine), slipDraws))
    const { result: finding, took } = timed(() => finder(query))
    first.push(took)
    oneMark.push(timed(() => finder(withOneMark(query))).took)
    return { machine, truth: truthOf(machine), finding }
  })
  return { tried, times: { first, oneMark } }
}

/** How many sets of strips are found whole, and whether all is named where nothing is selected. */
export interface StripRun {
  readonly sets: number
  readonly found: number
  readonly allSeized: boolean
}

/** Tries a finder on so many machines with some strips seized or slow, noted without a slip. */
export const tryStripSets = (finder: Finder, seed: number, count: number): StripRun => {
  const machines = stripSets(seed, count)
  const found = machines.filter((machine) => {
    const { places } = finder(queryOf(machine, bedsOf(machine)))
    const likely = new Set(places.filter(({ wrong }) => wrong > 0.5).map(({ place }) => place))
    return machine.faults.every((fault) => likely.has(placeOfFault(fault)))
  })
  return {
    sets: machines.length,
    found: found.length,
    allSeized: namesAllWhereNothing(finder(queryOf(allSeized, bedsOf(allSeized)))),
  }
}
