import { dimensions } from '../mechanism/dimensions.ts'
import type { ByHand } from './by-hand.ts'
import { needleChances, otherNeedle } from './chances.ts'
import { bedLengths } from '../mechanism/indices.ts'
import { possibleSlot } from './bed-needles.ts'
import type { Followers, FollowerValues } from './follower-values.ts'
import { notes } from './bed-letters.ts'
import { type Look, noteIn } from './looks.ts'
import { type LookChances, lookChances, type NoteChances, noteChances } from './note-chances.ts'
import type { WideBed } from './wide-bed.ts'

const { strips } = dimensions

/** How many needles a strip of the longest bed may have. */
export const needlesPerStrip = Math.ceil(bedLengths.most / strips)

/** Where a needle's numbers are among those of its strip: its needles are so many strips apart. */
export const placeOnStrip = (needle: number): number => Math.floor(possibleSlot(needle) / strips)

/**
 * How likely the notes of each needle of a strip are, as a sum of a part that follows its strip and parts that don't. A look
 * in which a needle is offered a hold multiplies the part that follows by its factor. Each list is by slot.
 */
export interface NeedleSums {
  readonly looks: number
  /** Sound and following; what a look with an offer multiplies it with, by slot and look. */
  readonly hears: Float64Array
  readonly factors: Float64Array
  /** The same for a stiff needle, which follows in slow looks only. */
  readonly stiff: Float64Array
  readonly stiffFactors: Float64Array
  /** Whether stiff needles follow in any look. */
  readonly stiffHears: boolean
  /** All that doesn't follow, and its parts by state. */
  readonly deaf: Float64Array
  readonly parts: {
    readonly worn: Float64Array
    readonly noHold: Float64Array
    readonly gone: Float64Array
    readonly other: Float64Array
  }
  /** The log of what these numbers are measured in, for all needles of the strip: the same whatever the certainty. */
  readonly log: number
  /** Looks that can show whether it was offered a hold; and those in which any of them can. */
  readonly showing: Int32Array
  readonly anyShowing: number
  /** What some of these needles come to together, as far as that was asked for before. */
  readonly known: Map<Followers, FollowerValues>
}

const otherNotes = [otherNeedle.selected, otherNeedle.plain, otherNeedle.unmoved, 1] as const

/** What needles are weighed by: chances of notes for a bed in some state, with a bar in some state. */
export interface NeedleTables {
  readonly chances: readonly LookChances[]
  readonly unmoved: readonly number[]
  /** Whether stiff needles follow in any look. */
  readonly stiffHears: boolean
  /** By look: what an offer multiplies each note's chance with where pushes are certain, and the same of stiff needles. */
  readonly gains: readonly (readonly number[])[]
  readonly stiffGains: readonly (readonly number[])[]
}

const gainsOf = (all: readonly LookChances[], from: 'free' | 'stiff'): number[][] =>
  all.map((chances) => chances[from].map((free, note) => chances.held[note]! / free))

/** The tables for a bed in some state; `retainer` is the median time constant of a worn bar in ms, 0 for a sound one. */
export const needleTablesOf = (bed: WideBed, slip: number, retainer: number): NeedleTables => {
  const all: NoteChances = noteChances(slip)
  const chances = lookChances(bed, retainer, all)
  const stiffHears = chances.some(
    (chance, n) => (bed.holds & (1 << n)) !== 0 && chance.stiff !== all.selected,
  )
  return {
    chances,
    unmoved: all.unmoved,
    stiffHears,
    gains: gainsOf(chances, 'free'),
    stiffGains: gainsOf(chances, 'stiff'),
  }
}

const right = 1 - needleChances.noHold - needleChances.stiff - needleChances.gone - needleChances.other

/**
 * The sums of the needles of one strip. `meets` is the chance that a dip still meets its catch; `certainty` the chance that a
 * push suffices this time.
 */
export const needleSumsOf = (
  { chances, unmoved, stiffHears, gains, stiffGains }: NeedleTables,
  needles: readonly number[],
  lookList: readonly Look[],
  byHand: Pick<ByHand, 'needles'>,
  meets: number,
  certainty: number,
): NeedleSums => {
  const looks = lookList.length
  const made = (): Float64Array => new Float64Array(needlesPerStrip)
  const [hears, stiff, deaf] = [made(), made(), made()]
  const parts = { worn: made(), noHold: made(), gone: made(), other: made() }
  const factors = new Float64Array(needlesPerStrip * looks).fill(1)
  const stiffFactors = new Float64Array(needlesPerStrip * looks).fill(1)
  const showing = new Int32Array(needlesPerStrip)
  let log = 0
  let anyShowing = 0
  for (const needle of needles) {
    const slot = placeOnStrip(needle)
    let shows = 0
    let free = 1
    let stiffFree = 1
    let gone = 1
    let other = 1
    let most = 1
    let stiffMost = 1
    for (let n = 0; n < looks; n++) {
      const note = noteIn(lookList[n]!, needle)
      if (note === notes.none) continue
      const gain = gains[n]![note]!
      const stiffGain = stiffGains[n]![note]!
      if (gain !== 1 || stiffGain !== 1) {
        factors[slot * looks + n] = 1 + certainty * (gain - 1)
        stiffFactors[slot * looks + n] = 1 + certainty * (stiffGain - 1)
        shows |= 1 << n
      }
      const chance = chances[n]!
      free *= chance.free[note]!
      stiffFree *= chance.stiff[note]!
      gone *= unmoved[note]!
      other *= otherNotes[note]!
      most *= Math.max(1, gain)
      stiffMost *= Math.max(1, stiffGain)
    }
    showing[slot] = shows
    anyShowing |= shows
    const hand = byHand.needles[possibleSlot(needle)]!
    const sound = right * hand.right
    const own = {
      noHold: hand.noHold * needleChances.noHold * free,
      stiff: hand.stiff * needleChances.stiff * stiffFree,
      gone: hand.gone * needleChances.gone * gone,
      other: hand.right * needleChances.other * other,
    }
    const scale = sound * free * most + own.stiff * stiffMost + own.gone + own.other
    log += Math.log(scale)
    const worn = (sound * (1 - meets) * free) / scale
    const [noHold, missing, rest] = [own.noHold / scale, own.gone / scale, own.other / scale]
    hears[slot] = (sound * meets * free) / scale
    stiff[slot] = own.stiff / scale
    parts.worn[slot] = worn
    parts.noHold[slot] = noHold
    parts.gone[slot] = missing
    parts.other[slot] = rest
    deaf[slot] = worn + noHold + missing + rest + (stiffHears ? 0 : own.stiff / scale)
  }
  return {
    looks,
    hears,
    factors,
    stiff,
    stiffFactors,
    stiffHears,
    deaf,
    parts,
    log,
    showing,
    anyShowing,
    known: new Map(),
  }
}

const offeredTo = (
  start: number,
  factors: Float64Array,
  { looks, showing }: NeedleSums,
  slot: number,
  offered: number,
): number => {
  let value = start
  const from = slot * looks
  for (let left = offered & showing[slot]!; left !== 0; left &= left - 1)
    value *= factors[from + 31 - Math.clz32(left & -left)]!
  return value
}

/** The part of a needle's value, by its place, that follows its strip, where it is offered a hold in the looks of `offered`. */
export const hearsValue = (sums: NeedleSums, slot: number, offered: number): number =>
  offeredTo(sums.hears[slot]!, sums.factors, sums, slot, offered)

/** The part of it that is a stiff needle, where stiff needles follow in some look. */
export const stiffValue = (sums: NeedleSums, slot: number, offered: number): number =>
  offeredTo(sums.stiff[slot]!, sums.stiffFactors, sums, slot, offered)

/** How likely a needle's notes are, by its place, where it is offered a hold in the looks of `offered`. */
export const needleValue = (sums: NeedleSums, slot: number, offered: number): number => {
  const value = hearsValue(sums, slot, offered) + sums.deaf[slot]!
  return sums.stiffHears ? value + stiffValue(sums, slot, offered) : value
}
