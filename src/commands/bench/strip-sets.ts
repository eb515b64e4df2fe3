import type { Finding } from '../../find/finding.ts'
import { type Place, stripPlace } from '../../find/place.ts'
import { type Card, everyHole } from '../../mechanism/card.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { faultOf } from '../../mechanism/read-fault.ts'
import { allStrips, type Strip } from '../../mechanism/indices.ts'
import { type Draws, drawsOf } from './draws.ts'
import { looksAt, type Machine } from './machine.ts'

/** A full row, a blank one, columns 1 to 8 alone and columns 9 to 16 alone: each strip by one column, then by another. */
const card: Card = [everyHole, 0, 0xff0000, 0x00ff00]

const machineWith = (faults: readonly Fault[]): Machine => ({
  card,
  isCardOut: false,
  faults,
  wear: 0,
  seed: 1,
  looks: looksAt(card, card.length),
})

const seizedStrip = (strip: Strip): Fault => faultOf(`strip.${strip}.seized`)

const slowStrip = ({ between }: Draws, strip: Strip): Fault =>
  faultOf(`strip.${strip}.slow=${Math.round(Math.exp(between(Math.log(120), Math.log(1000))))}`)

/** Machine `n` of a seed with nothing wrong but one to eight strips seized or slow, of all eight at least one slow. */
const machineOf = (seed: number, n: number): Machine => {
  const draws = drawsOf(seed * 1_000_000 + n)
  const strips = draws.several(allStrips, (n % allStrips.length) + 1)
  const seized = draws.whole(0, Math.min(strips.length, allStrips.length - 1))
  return machineWith(
    strips.map((strip, nth) => (nth < seized ? seizedStrip(strip) : slowStrip(draws, strip))),
  )
}

/** So many machines of a seed, a whole number below 1000, each with its own set of strips seized or slow. */
export const stripSets = (seed: number, count: number): Machine[] =>
  Array.from({ length: count }, (_, n) => machineOf(seed, n))

/** A machine all of whose strips are seized, which selects nothing. */
export const allSeized: Machine = machineWith(allStrips.map(seizedStrip))

/** What may be wrong where nothing is selected. */
const whereNothing: readonly Place[] = [
  'carriage',
  'belt',
  'gate',
  'sweep',
  'card',
  ...allStrips.map(stripPlace),
]

/** Whether a finding names together all that may be wrong where nothing is selected. */
export const namesAllWhereNothing = ({ together }: Pick<Finding, 'together'>): boolean =>
  together.some(({ places }) => whereNothing.every((place) => places.includes(place)))
