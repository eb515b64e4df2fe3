import type { ByHand } from './by-hand.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { chanceOfSlower, springing } from '../mechanism/gate.ts'
import { timeOver } from '../mechanism/travel.ts'
import { constantsBetween } from '../mechanism/travel.ts'
import { needleChances, otherNeedle, stiffMs, wrongNotes } from './chances.ts'
import { notes } from './letters.ts'
import type { WideBed } from './wide.ts'

const { needles, gateLag, gate1 } = dimensions

/**
 * How likely the notes of each needle are, as a sum of a part that follows its strip and parts that don't. A look in
 * which a needle is offered a hold multiplies the part that follows by its factor.
 */
export interface NeedleSums {
  readonly looks: number
  /** By needle: sound and following; what a look with an offer multiplies it with, by needle and look. */
  readonly hears: Float64Array
  readonly factors: Float64Array
  /** The same for a stiff needle, which follows in slow looks only. */
  readonly stiff: Float64Array
  readonly stiffFactors: Float64Array
  /** Whether stiff needles follow in any look. */
  readonly stiffHears: boolean
  /** By needle: all that doesn't follow, and its parts by state. */
  readonly deaf: Float64Array
  readonly parts: {
    readonly worn: Float64Array
    readonly noHold: Float64Array
    readonly gone: Float64Array
    readonly other: Float64Array
  }
  /** The log of what each needle's numbers are measured in: the same whatever the certainty. */
  readonly logs: Float64Array
  /** By look and note: the chance that the note is a slip, of a needle that is held, free, or stiff and free. */
  readonly slipped: { readonly held: Float64Array; readonly free: Float64Array; readonly stiff: Float64Array }
  /** By needle: looks that can tell whether it was offered a hold. */
  readonly telling: Int32Array
}

/** Chances of each note of a needle that is selected, plain or unmoved. */
interface NoteChances {
  readonly selected: readonly number[]
  readonly plain: readonly number[]
  readonly unmoved: readonly number[]
}

const noteChances = (slip: number): NoteChances => {
  const { other, unmoved, goneSelected, gonePlain } = wrongNotes
  return {
    selected: [1 - slip, slip * other, slip * unmoved, 1],
    plain: [slip * other, 1 - slip, slip * unmoved, 1],
    unmoved: [slip * goneSelected, slip * gonePlain, 1 - slip, 1],
  }
}

/** By look and note: the chance that the note is a slip, where its chances are `by`, and `right` if it is none. */
const slipChances = (
  chances: readonly LookChances[],
  by: (chance: LookChances) => readonly number[],
  slip: number,
): Float64Array => {
  const all = new Float64Array(chances.length * 4)
  const kinds = noteChances(slip)
  for (const [n, chance] of chances.entries())
    for (const note of [notes.s, notes.p, notes.u]) {
      const given = by(chance)
      const late =
        (given[notes.s]! - kinds.plain[notes.s]!) / (kinds.selected[notes.s]! - kinds.plain[notes.s]!)
      const isRight = note === notes.s ? late * (1 - slip) : note === notes.p ? (1 - late) * (1 - slip) : 0
      all[n * 4 + note] = 1 - isRight / given[note]!
    }
  return all
}

const otherNotes = [otherNeedle.selected, otherNeedle.plain, otherNeedle.unmoved, 1] as const

/** By look: how likely each note is of a needle that is free, that is held, and that is stiff and free. */
interface LookChances {
  readonly free: readonly number[]
  readonly held: readonly number[]
  readonly stiff: readonly number[]
}

const mixed = (share: number, one: readonly number[], other: readonly number[]): number[] =>
  one.map((chance, n) => share * chance + (1 - share) * (other[n] ?? 0))

const lookChances = (bed: WideBed, retainer: number, all: NoteChances): LookChances[] =>
  bed.looks.map(({ view }, n) => {
    const bit = 1 << n
    if (bed.plain & bit) return { free: all.plain, held: all.plain, stiff: all.plain }
    if (bed.all & bit) return { free: all.selected, held: all.selected, stiff: all.selected }
    const dip = bed.dips[n] ?? dimensions.presser
    const time = timeOver(gateLag, view.speed)
    const late =
      retainer === 0 || dip <= gate1 ? 0 : chanceOfSlower(retainer, time / constantsBetween(dip, gate1))
    const isLate = -springing(dip, time, stiffMs) >= gate1
    const free = mixed(late, all.selected, all.plain)
    return {
      free,
      held: bed.holds & bit ? all.selected : free,
      stiff: isLate ? all.selected : all.plain,
    }
  })

/**
 * The sums of every needle for a bed in some state. `retainer` is the median time constant of a worn bar in ms, 0 for a
 * sound one; `meets` the chance that a dip still meets its catch; `certainty` the chance that a push suffices this time.
 */
export const needleSumsOf = (
  bed: WideBed,
  { slip, byHand }: { readonly slip: number; readonly byHand: Pick<ByHand, 'needles'> },
  retainer: number,
  meets: number,
  certainty: number,
): NeedleSums => {
  const looks = bed.looks.length
  const all = noteChances(slip)
  const chances = lookChances(bed, retainer, all)
  const made = (): Float64Array => new Float64Array(needles)
  const [hears, stiff, deaf, logs] = [made(), made(), made(), made()]
  const parts = { worn: made(), noHold: made(), gone: made(), other: made() }
  const factors = new Float64Array(needles * looks)
  const stiffFactors = new Float64Array(needles * looks)
  const telling = new Int32Array(needles)
  const sound = 1 - needleChances.noHold - needleChances.stiff - needleChances.gone - needleChances.other
  const stiffHears = chances.some(
    (chance, n) => (bed.holds & (1 << n)) !== 0 && chance.stiff !== all.selected,
  )
  const tables = chances.map((chance) => ({
    ...chance,
    factor: chance.free.map((free, note) => 1 + certainty * (chance.held[note]! / free - 1)),
    stiffFactor: chance.stiff.map((stiff, note) => 1 + certainty * (chance.held[note]! / stiff - 1)),
    most: chance.free.map((free, note) => Math.max(1, chance.held[note]! / free)),
    stiffMost: chance.stiff.map((stiff, note) => Math.max(1, chance.held[note]! / stiff)),
  }))
  for (let needle = 0; needle < needles; needle++) {
    let free = 1
    let stiffFree = 1
    let gone = 1
    let other = 1
    let most = 1
    let stiffMost = 1
    let tells = 0
    for (let n = 0; n < looks; n++) {
      const note = bed.looks[n]!.noted[needle]!
      if (note === notes.none) {
        factors[needle * looks + n] = 1
        stiffFactors[needle * looks + n] = 1
        continue
      }
      const table = tables[n]!
      const factor = table.factor[note]!
      const stiffFactor = table.stiffFactor[note]!
      factors[needle * looks + n] = factor
      stiffFactors[needle * looks + n] = stiffFactor
      if (factor !== 1 || stiffFactor !== 1) tells |= 1 << n
      free *= table.free[note]!
      stiffFree *= table.stiff[note]!
      gone *= all.unmoved[note]!
      other *= otherNotes[note]!
      most *= table.most[note]!
      stiffMost *= table.stiffMost[note]!
    }
    telling[needle] = tells
    const hand = byHand.needles[needle]!
    const right = sound * hand.right
    const own = {
      noHold: hand.noHold * needleChances.noHold * free,
      stiff: hand.stiff * needleChances.stiff * stiffFree,
      gone: hand.gone * needleChances.gone * gone,
      other: hand.right * needleChances.other * other,
    }
    const scale = right * free * most + own.stiff * stiffMost + own.gone + own.other
    logs[needle] = Math.log(scale)
    hears[needle] = (right * meets * free) / scale
    stiff[needle] = own.stiff / scale
    parts.worn[needle] = (right * (1 - meets) * free) / scale
    parts.noHold[needle] = own.noHold / scale
    parts.gone[needle] = own.gone / scale
    parts.other[needle] = own.other / scale
    const still = parts.worn[needle]! + parts.noHold[needle]! + parts.gone[needle]! + parts.other[needle]!
    deaf[needle] = stiffHears ? still : still + stiff[needle]!
  }
  const slipped = {
    held: slipChances(chances, ({ held }) => held, slip),
    free: slipChances(chances, ({ free }) => free, slip),
    stiff: slipChances(chances, (chance) => chance.stiff, slip),
  }
  return { looks, hears, factors, stiff, stiffFactors, stiffHears, deaf, parts, slipped, logs, telling }
}

/** How likely a needle's notes are where it is offered a hold in the looks of `offered`. */
export const needleValue = (sums: NeedleSums, needle: number, offered: number): number => {
  const { looks, factors, telling } = sums
  let hears = sums.hears[needle]!
  const from = needle * looks
  for (let left = offered & telling[needle]!; left !== 0; left &= left - 1)
    hears *= factors[from + 31 - Math.clz32(left & -left)]!
  if (!sums.stiffHears) return hears + sums.deaf[needle]!
  return hears + stiffValue(sums, needle, offered) + sums.deaf[needle]!
}

/** The part of it that is a stiff needle, where stiff needles follow in some look. */
export const stiffValue = (sums: NeedleSums, needle: number, offered: number): number => {
  const { looks, stiffFactors, telling } = sums
  let stiff = sums.stiff[needle]!
  const from = needle * looks
  for (let left = offered & telling[needle]!; left !== 0; left &= left - 1)
    stiff *= stiffFactors[from + 31 - Math.clz32(left & -left)]!
  return stiff
}

/** The part of a needle's value in which its note of a look is a slip, or nothing explains the needle. */
export const slipValue = (
  sums: NeedleSums,
  needle: number,
  look: number,
  note: number,
  offered: number,
): number => {
  if (note === notes.none) return 0
  const { slipped, parts } = sums
  const place = look * 4 + note
  const isOffered = (offered & (1 << look)) !== 0
  const stiff = sums.stiffHears ? stiffValue(sums, needle, offered) : sums.stiff[needle]!
  const hears = needleValue(sums, needle, offered) - sums.deaf[needle]! - (sums.stiffHears ? stiff : 0)
  return (
    hears * (isOffered ? slipped.held[place]! : slipped.free[place]!) +
    (parts.worn[needle]! + parts.noHold[needle]!) * slipped.free[place]! +
    stiff * (isOffered ? slipped.held[place]! : slipped.stiff[place]!) +
    (note === notes.u ? 0 : parts.gone[needle]!) +
    parts.other[needle]!
  )
}
