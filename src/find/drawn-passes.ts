import { modulo } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { chanceOfSlower } from '../mechanism/gate.ts'
import { at } from '../mechanism/lookup.ts'
import { constantsBetween, timeOver } from '../mechanism/travel.ts'
import { retainerMs } from './chances.ts'
import type { DrawnMachine, DrawnStrip } from './draw-machines.ts'
import type { DrawnColumn } from './drawn-columns.ts'
import { stripColumns } from './frame.ts'
import type { Look } from './looks.ts'
import { lastingsIn } from './lastings.ts'
import { type Numbers, pickIndex } from './seeded.ts'
import { type WideBed, wideBedOf } from './wide-bed.ts'

const { columns, strips } = dimensions

/**
 * What a drawn machine does in some passes, a bit a pass. Needles of one column do the same but near the bed's ends, and
 * so are one: a place is a needle's distance from that of column 1, modulo 24, whatever moves the pattern along the bed.
 */
export interface DrawnPasses {
  /** By place: the passes in which its needles are selected, and those in which only some of them are. */
  readonly all: Int32Array
  readonly some: Int32Array
  /** The passes in which a needle is selected or not by whether it is offered a hold. */
  readonly sorts: number
  /** By pass: how many needles are selected late by a worn bar, on average. */
  readonly late: Float64Array
}

/** The most passes that are computed at once: a bit each. */
export const mostAtOnce = 31

/** A push that suffices with a chance between these is seen to fail on some needles of a pass. */
const failing = { least: 0.1, most: 0.95 } as const

const everyPass = (count: number): number => 2 ** count - 1

const chosen = (bits: number, chance: number, next: Numbers): number => {
  let taken = 0
  for (let left = bits; left !== 0; left &= left - 1) if (next() < chance) taken |= left & -left
  return taken
}

/** The passes in which a column pushes far enough. */
const pushesOf = ({ state, stays }: DrawnColumn, bed: WideBed, column: number, next: Numbers): number => {
  switch (state) {
    case 'sound':
    case 'hole':
      return at(bed.pushed, column)
    case 'worn':
    case 'dead':
      return 0
    case 'high':
      return bed.pushes
    case 'over':
      return at(bed.pushed, column)
    case 'sticky':
      return chosen(at(bed.pushed, column), 1 - stays, next)
    case 'other':
      return chosen(bed.pushes, 0.5, next)
  }
}

/**
 * To which needles of its strip a push offers a hold, on a slow strip: its own column's, the next in the way of the pass, and
 * the next but one.
 */
interface Lasts {
  readonly own: number
  readonly once: number
  readonly twice: number
}

/** How a column's pushes last on a strip that is so slow, in each pass as wear may have left them. */
const lastsOf = (pushes: number, bed: WideBed, wear: number, slow: number, next: Numbers): Lasts => {
  let [own, once, twice] = [0, 0, 0]
  const kinds = new Map<string, number>()
  for (const [n, { view }] of bed.looks.entries()) {
    const bit = 1 << n
    if ((pushes & bit) === 0) continue
    const early = at(bed.early, n)
    const key = `${view.speed} ${early}`
    let bits = kinds.get(key)
    if (bits === undefined) {
      const { cases, chances } = lastingsIn(bed.peaks, [{ speed: view.speed, early }])
      const which = pickIndex(at(at(chances, wear), slow), next)
      kinds.set(key, (bits = at(at(cases, which), 0)))
    }
    // The third on is of its own column again.
    if (bits & (1 | 8)) own |= bit
    if (bits & 2) once |= bit
    if (bits & 4) twice |= bit
  }
  return { own, once, twice }
}

/** The passes in which each of a slow strip's columns has its needles offered a hold: by its own push, or by one before. */
const slowOffers = (
  pushes: readonly number[],
  { slow }: DrawnStrip,
  bed: WideBed,
  { hidden }: DrawnMachine,
  next: Numbers,
): number[] => {
  const right = bed.looks.reduce((bits, { way }, n) => (way === 1 ? bits | (1 << n) : bits), 0)
  const lasts = pushes.map((own) => lastsOf(own, bed, hidden.wear, slow, next))
  return lasts.map(({ own }, m) => {
    const [before, after] = [at(lasts, (m + 2) % 3), at(lasts, (m + 1) % 3)]
    const toRight = before.once | after.twice
    const toLeft = after.once | before.twice
    return own | (toRight & right) | (toLeft & ~right)
  })
}

/** The passes in which each of a strip's columns has its needles offered a hold. */
const offersOfStrip = (
  machine: DrawnMachine,
  strip: number,
  bed: WideBed,
  next: Numbers,
): readonly number[] => {
  const drawn = at(machine.strips, strip)
  if (drawn.state === 'seized') return [0, 0, 0]
  if (drawn.state === 'over') return [bed.shifted, bed.shifted, bed.shifted]
  const own = stripColumns(strip)
  const pushes = drawn.columns.map((column, m) => pushesOf(column, bed, at(own, m), next))
  if (drawn.state === 'slow') return slowOffers(pushes, drawn, bed, machine, next)
  // A pin that stays pushed over keeps its strip there for all its columns.
  const kept = drawn.columns.reduce(
    (bits, { state }, m) => (state === 'over' ? bits | at(pushes, m) : bits),
    0,
  )
  return pushes.map((own) => (own & bed.meets) | kept)
}

const bitsOf = (count: number): number[] => Array.from({ length: count }, (_, n) => 1 << n)

/** How many needles come late by a worn bar, pass by pass, among those that nothing else selects. */
const lateIn = ({ retainer }: DrawnMachine, bed: WideBed, all: Int32Array): Float64Array => {
  const late = new Float64Array(bed.looks.length)
  if (retainer < 0) return late
  const own = bed.peaks.dimensions
  const { gate1, gateLag, needles } = own
  for (const [n, { view }] of bed.looks.entries()) {
    const dip = at(bed.dips, n)
    if (dip <= gate1 || bed.plain & (1 << n)) continue
    const longest = timeOver(own, gateLag, view.speed) / constantsBetween(dip, gate1)
    const plain = all.reduce((count, bits) => count + (bits & (1 << n) ? 0 : 1), 0)
    late[n] = (chanceOfSlower(at(retainerMs, retainer), longest) * plain * needles) / columns
  }
  return late
}

/** What a drawn machine does in passes, at most `mostAtOnce`; `next` decides what chance decides in each. */
export const drawnPasses = (machine: DrawnMachine, looks: readonly Look[], next: Numbers): DrawnPasses => {
  const bed = wideBedOf(machine.bed.state, looks)
  const every = everyPass(looks.length)
  const all = new Int32Array(columns)
  const some = new Int32Array(columns)
  for (let strip = 0; strip < strips; strip++) {
    const offers = offersOfStrip(machine, strip, bed, next)
    for (const [m, column] of stripColumns(strip).entries()) {
      const place = modulo(column - bed.offset, columns)
      const { certainty } = at(at(machine.strips, strip).columns, m)
      const held = at(offers, m) & bed.holds & every
      const isFailing = certainty > failing.least && certainty < failing.most
      some[place] = isFailing ? held & ~bed.all : 0
      all[place] = ((isFailing ? 0 : held) | bed.all) & ~bed.plain & every
    }
  }
  return { all, some, sorts: bed.holds, late: lateIn(machine, bed, all) }
}

/** The same for a bed in some state that is sound otherwise: by pass, its places as bits. */
export const soundPlaces = (bed: WideBed): number[] =>
  bitsOf(bed.looks.length).map((bit) => {
    let places = 0
    for (let column = 0; column < columns; column++) {
      const held = at(bed.pushed, column) & bed.meets & bed.holds
      if ((held | bed.all) & ~bed.plain & bit) places |= 1 << modulo(column - bed.offset, columns)
    }
    return places
  })
