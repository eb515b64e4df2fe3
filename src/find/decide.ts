import { everyHole } from '../mechanism/card.ts'
import type { Check } from './checks.ts'
import type { Inference } from './infer.ts'
import { minutesOf, partsOf, type PartCount, type Work, worth } from './mending.ts'
import type { Place } from './place.ts'
import { type PossibleMachine, possibleMachines, type Wrong } from './possible-machines.ts'
import type { Query } from './query.ts'
import { openedBy, type Opening, openingsOf, type PartId, repairOf } from './repairs.ts'
import { type SoundPart, soundParts } from './sound-parts.ts'
import { waysToGo } from './ways-to-go.ts'
import { type IsWhole, wholeRuns } from './whole-run.ts'

/** What an hour and parts cost, in any one currency; a part without a price costs nothing. */
export interface Prices {
  readonly hour: number
  readonly parts: Readonly<Partial<Record<PartId, number>>>
}

/** A way to go: what is worked on, what it takes, and what may come of it. */
export interface WayToGo {
  readonly works: readonly Work[]
  readonly minutes: number
  readonly opens: readonly Opening[]
  readonly opened: Check['opened']
  /** The greatest risk of its works, as of checks. */
  readonly risk: number
  readonly parts: readonly PartCount[]
  /** Time and the parts that it takes for sure; null without prices. */
  readonly cost: number | null
  /** Chance that the pattern comes out whole then. */
  readonly chance: number
  /** Places that may be wrong and are not worked on. */
  readonly unknown: readonly Place[]
}

/** What may be done with a machine. */
export interface Decision {
  /** Chance that the pattern comes out whole as the machine is. */
  readonly now: number
  /** Best first, by how much likelier the pattern is to come out whole for the time. */
  readonly ways: readonly WayToGo[]
  /** Chance that it knits plain as it is: every needle moves freely, and the bar presses them. */
  readonly plain: number
  /** What of it is shown sound enough to serve other machines. */
  readonly serves: readonly SoundPart[]
}

/** So many machines are drawn. */
const drawn = 160

/** What it takes, in minutes, to try the machine after any work. Common practice from memory, no source. */
const trialMinutes = 5

/** A card of which no row is known is taken to ask for everything, and for nothing. */
const plainRows = [everyHole, 0]

/** What is still wrong with a machine when these works are done. */
const leftAfter = (machine: PossibleMachine, works: readonly Work[]): Wrong[] =>
  machine.filter(
    ({ place, mendedBy }) =>
      !works.some(({ repair, places }) => repair === mendedBy && places.includes(place)),
  )

/** Whether a machine comes out whole with something still wrong: never without a card, nor with what nobody knows. */
const isWholeWith = (left: readonly Wrong[], isWhole: IsWhole, seed: number): boolean => {
  const faults = left.flatMap(({ fault }) => (fault === 'out' || fault === null ? [] : [fault]))
  return faults.length === left.length && isWhole(faults, seed)
}

/** Whether a machine does not knit even plain: a needle is gone or goes hard, or the bar does not press. */
const spoilsPlain = ({ fault }: Wrong): boolean =>
  fault !== null &&
  fault !== 'out' &&
  (fault.kind === 'needle.gone' || fault.kind === 'needle.stiff' || fault.kind === 'retainer.worn')

const costOf = (minutes: number, parts: readonly PartCount[], prices: Prices | null): number | null =>
  prices &&
  (minutes / 60) * prices.hour +
    parts.reduce((sum, { part, count, isSure }) => sum + (isSure ? count * (prices.parts[part] ?? 0) : 0), 0)

/**
 * What may be done with a machine, from what is still possible: `inference` is that of the query. Chances are shares of
 * machines drawn by the seed, each run by the model through every row of the card both ways.
 */
export const decide = (
  query: Query,
  { finding, beds }: Inference,
  seed: number,
  prices: Prices | null = null,
): Decision => {
  const machines = possibleMachines(beds, drawn, seed)
  const isWhole = wholeRuns(query.card ?? plainRows, query)
  const chanceAfter = (works: readonly Work[]): number =>
    machines.filter((machine, n) => isWholeWith(leftAfter(machine, works), isWhole, seed + n)).length /
    machines.length
  const now = chanceAfter([])
  const ways = waysToGo(finding).map((works): WayToGo => {
    const ids = works.map(({ repair }) => repair)
    const touched = new Set(works.flatMap(({ places }) => places))
    const opens = openingsOf(ids)
    const minutes = minutesOf(works)
    const parts = partsOf(works)
    return {
      works,
      minutes,
      opens,
      opened: openedBy(opens),
      risk: Math.max(...ids.map((id) => repairOf(id).risk)),
      parts,
      cost: costOf(minutes, parts, prices),
      chance: chanceAfter(works),
      unknown: finding.places
        .filter(({ place, wrong }) => wrong < 1 - worth.least && !touched.has(place))
        .map(({ place }) => place),
    }
  })
  const gain = ({ chance, minutes }: WayToGo): number => (chance - now) / (minutes + trialMinutes)
  return {
    now,
    ways: ways.sort((one, other) => gain(other) - gain(one) || one.minutes - other.minutes),
    plain: machines.filter((machine) => !machine.some(spoilsPlain)).length / machines.length,
    serves: soundParts(query, finding),
  }
}
