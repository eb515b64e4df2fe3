import { columnOfNeedle, stripOfNeedle } from '../mechanism/bed.ts'
import type { Fault } from '../mechanism/fault.ts'
import { allStrips, type Needle, type Strip } from '../mechanism/indices.ts'
import { startRun } from '../mechanism/pass.ts'
import type { Scenario } from '../mechanism/scenario.ts'
import { letterOf, needlesAt } from './bed-needles.ts'
import { slowChances } from './chances.ts'
import type { RankedMachine } from './finding.ts'
import { isKindByChance } from './kinds-by-chance.ts'
import { type Letters, lettersOf } from './bed-letters.ts'
import { faultOfCause } from './place.ts'
import { type Query, viewsOfQuery } from './query.ts'
import { scenarioIn, type View } from './view.ts'

/** How well a whole machine meets the notes, in needles, each counted once in each pass. */
export interface MachineFit {
  /** Needles looked at. */
  readonly looked: number
  /** Noted otherwise than a sound machine would have it. */
  readonly departures: number
  /** Of these, as this machine has it, or as it may have it where chance decides. */
  readonly explained: number
  /** Of these, how many chance decides of. */
  readonly byChance: number
  /** Noted as a sound machine has it, where this one has it otherwise. */
  readonly contrary: number
}

/** What a machine does in a view: a letter a needle. */
const bedIn = (view: View, faults: readonly Fault[]): Letters =>
  lettersOf(startRun(scenarioIn(view, faults)).passOf(view.pass))

/** What a needle may do beside what it does without chance. */
const chancesOf = (faults: readonly Fault[], view: View) => {
  const place: Scenario = scenarioIn(view, [])
  const sticky = new Set(faults.flatMap((fault) => (fault.kind === 'pin.sticky' ? [fault.at[0]] : [])))
  const isLoose = faults.some(({ kind }) => kind === 'pivots.loose')
  const isLate = faults.some(({ kind }) => kind === 'retainer.worn')
  return (needle: Needle, sure: string, noted: string): boolean =>
    sure === 's' && noted === 'p'
      ? isLoose || sticky.has(columnOfNeedle(needle, place))
      : isLate && sure === 'p' && noted === 's'
}

const looksOf = (query: Query): { view: View; noted: Letters }[] =>
  viewsOfQuery(query).map((view, n) => ({ view, noted: query.passes[n]!.needles }))

const withSlowness = (faults: readonly Fault[], ms: number): Fault[] =>
  faults.map((fault) => (fault.kind === 'strip.slow' ? { ...fault, amount: ms } : fault))

/** The beds of a machine in each look, with every slow strip as slow as meets the notes best. */
const bedsOf = (looks: readonly { view: View; noted: Letters }[], faults: readonly Fault[]): Letters[] => {
  const isSlow = faults.some(({ kind }) => kind === 'strip.slow')
  const tried = (isSlow ? slowChances.map(({ ms }) => ms) : [0]).map((ms) =>
    looks.map(({ view }) => bedIn(view, withSlowness(faults, ms))),
  )
  const stripOf = needlesAt(looks[0]!.view).map((needle) => stripOfNeedle(needle, looks[0]!.view))
  const missesOf = (beds: readonly Letters[], strip: Strip): number =>
    looks.reduce(
      (sum, { noted }, n) =>
        sum +
        stripOf.filter((one, slot) => one === strip && noted[slot] !== '?' && noted[slot] !== beds[n]![slot])
          .length,
      0,
    )
  const best = new Map(
    allStrips.map((strip) => {
      const misses = tried.map((beds) => missesOf(beds, strip))
      return [strip, tried[misses.indexOf(Math.min(...misses))]!]
    }),
  )
  return looks.map((_, n) => stripOf.map((strip, slot) => best.get(strip)![n]![slot]).join(''))
}

/**
 * How well a machine meets the notes of a query, by the mechanism itself: with the first cause of each way, at its usual
 * amount and without wear; strips as slow as meets the notes best.
 */
export const fitOfMachine = (query: Query, ways: NonNullable<RankedMachine['faults']>): MachineFit => {
  const looks = looksOf(query)
  const isOut = ways.some((causes) => causes.includes('card.out'))
  const faults = ways.flatMap(([first]) => (first === undefined ? [] : (faultOfCause(first) ?? [])))
  const sure = faults.filter(({ kind }) => !isKindByChance(kind))
  const seen = looks.map(({ view, noted }) => ({ view: isOut ? { ...view, card: null } : view, noted }))
  const fit = { looked: 0, departures: 0, explained: 0, byChance: 0, contrary: 0 }
  if (looks.length === 0) return fit
  const beds = bedsOf(seen, sure)
  for (const [n, { view, noted }] of looks.entries()) {
    const sound = bedIn(view, [])
    const mayBe = chancesOf(faults, view)
    for (const needle of needlesAt(query)) {
      const letter = letterOf(noted, needle)
      if (letter === '?') continue
      const [asked, does] = [letterOf(sound, needle), letterOf(beds[n]!, needle)]
      fit.looked++
      if (letter === asked) {
        if (does !== letter && !mayBe(needle, does, letter)) fit.contrary++
        continue
      }
      fit.departures++
      const isChance = does !== letter && mayBe(needle, does, letter)
      if (isChance) fit.byChance++
      if (does === letter || isChance) fit.explained++
    }
  }
  return fit
}
