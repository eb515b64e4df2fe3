import { needleName } from '../mechanism/bed.ts'
import { bedLengths } from '../mechanism/indices.ts'
import { possibleNeedles, possibleSlot } from './bed-needles.ts'
import { notes } from './bed-letters.ts'
import { type Look, noteIn } from './looks.ts'
import {
  hearsValue,
  needlesPerStrip,
  type NeedleSums,
  type NeedleTables,
  placeOnStrip,
  stiffValue,
} from './needle-sums.ts'
import { slipChances } from './note-chances.ts'
import { needlePlace } from './place.ts'
import type { Tally } from './tally.ts'

/** By look and note: the chance that the note is a slip, of a needle that is held, free, or stiff and free. */
export interface Slips {
  readonly held: Float64Array
  readonly free: Float64Array
  readonly stiff: Float64Array
}

export const slipsOf = ({ chances }: NeedleTables, slip: number): Slips => ({
  held: slipChances(chances, ({ held }) => held, slip),
  free: slipChances(chances, ({ free }) => free, slip),
  stiff: slipChances(chances, (chance) => chance.stiff, slip),
})

/** How many ways a needle may be wrong in: no hold, stiff, gone, something else. */
const needleWays = 4

/** What the needles of a bed add up to: ways in which they are wrong, and notes that are slips or that nothing explains. */
export interface NeedleTotals {
  /** By needle of `possibleNeedles` and way. */
  readonly ways: Float64Array
  /** By needle of `possibleNeedles` and look. */
  readonly slips: Float64Array
}

export const noNeedleTotals = (looks: number): NeedleTotals => ({
  ways: new Float64Array(bedLengths.most * needleWays),
  slips: new Float64Array(bedLengths.most * looks),
})

/** Adds up the needles of one strip, by the looks in which they may have been offered a hold. */
export class NeedleShares {
  private readonly sums: NeedleSums
  /** By slot: all that was added, and of it what follows; by slot and look, what follows and was offered. */
  private readonly units = new Float64Array(needlesPerStrip)
  private readonly hears = new Float64Array(needlesPerStrip)
  private readonly stiff = new Float64Array(needlesPerStrip)
  private readonly hearsOffered: Float64Array
  private readonly stiffOffered: Float64Array

  constructor(sums: NeedleSums) {
    this.sums = sums
    this.hearsOffered = new Float64Array(needlesPerStrip * sums.looks)
    this.stiffOffered = new Float64Array(needlesPerStrip * sums.looks)
  }

  /** Adds that a needle was offered a hold in these looks, with this weight. */
  add(needle: number, offered: number, weight: number): void {
    const { sums } = this
    const slot = placeOnStrip(needle)
    const hears = hearsValue(sums, slot, offered)
    const stiff = sums.stiffHears ? stiffValue(sums, slot, offered) : sums.stiff[slot]!
    const unit = weight / (hears + sums.deaf[slot]! + (sums.stiffHears ? stiff : 0))
    this.units[slot]! += unit
    this.hears[slot]! += unit * hears
    this.stiff[slot]! += unit * stiff
    for (let left = offered & sums.showing[slot]!; left !== 0; left &= left - 1) {
      const at = slot * sums.looks + 31 - Math.clz32(left & -left)
      this.hearsOffered[at]! += unit * hears
      this.stiffOffered[at]! += unit * stiff
    }
  }

  /** Adds what all this says of some needles to the totals. */
  addTo(totals: NeedleTotals, needles: readonly number[], looks: readonly Look[], slips: Slips): void {
    const { parts } = this.sums
    for (const needle of needles) {
      const slot = placeOnStrip(needle)
      const unit = this.units[slot]!
      if (unit === 0) continue
      const ways = [unit * parts.noHold[slot]!, this.stiff[slot]!, unit * parts.gone[slot]!]
      const other = unit * parts.other[slot]!
      for (const [n, weight] of [...ways, other].entries())
        totals.ways[possibleSlot(needle) * needleWays + n]! += weight
      const free = unit * (parts.worn[slot]! + parts.noHold[slot]!)
      for (const [n, look] of looks.entries()) {
        const note = noteIn(look, needle)
        if (note === notes.none) continue
        const [at, place] = [slot * looks.length + n, n * 4 + note]
        const [hears, stiff] = [this.hearsOffered[at]!, this.stiffOffered[at]!]
        totals.slips[possibleSlot(needle) * looks.length + n]! +=
          (hears + stiff) * slips.held[place]! +
          (this.hears[slot]! - hears + free) * slips.free[place]! +
          (this.stiff[slot]! - stiff) * slips.stiff[place]! +
          (note === notes.u ? 0 : unit * parts.gone[slot]!) +
          other
      }
    }
  }
}

/** Adds the ways in which needles are wrong, by needle and way, to a tally. */
export const addNeedleWays = (ways: Float64Array, tally: Tally): void => {
  for (const needle of possibleNeedles) {
    const place = needlePlace(needle)
    const name = needleName(needle)
    const weight = (n: number): number => ways[possibleSlot(needle) * needleWays + n]!
    tally.add(place, [`catch.${name}.broken`, `needle.${name}.bent`], weight(0))
    tally.add(place, [`needle.${name}.stiff`], weight(1))
    tally.add(place, [`needle.${name}.gone`], weight(2))
    tally.add(place, ['other'], weight(3))
  }
}
