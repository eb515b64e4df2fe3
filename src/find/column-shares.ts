import { at } from '../mechanism/lookup.ts'
import { allColumns } from '../mechanism/indices.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import type { ByHand } from './by-hand.ts'
import { columnChances, readers, stickyChances } from './chances.ts'
import { bitCount } from './bits.ts'
import { columnPlace } from './place.ts'
import type { ColumnState } from './strip-sums.ts'
import type { Tally } from './tally.ts'

/** What is added up of columns, before the shares of sticky pins. */
const named = ['dead', 'high', 'over', 'other'] as const
const size = named.length + stickyChances.length

/** The ways in which columns are wrong, added up. */
export class ColumnShares {
  private readonly weights = new Float64Array(dimensions.columns * size)

  /** Adds a state; a column that is right, or sticky, adds nothing here. */
  add(column: number, state: ColumnState, weight: number): void {
    const n = (named as readonly string[]).indexOf(state)
    if (n >= 0) this.weights[column * size + n]! += weight
  }

  /** Adds a pin that is sticky by the `n`th of the shares. */
  addSticky(column: number, n: number, weight: number): void {
    this.weights[column * size + named.length + n]! += weight
  }

  /** Adds a sticky pin, by what is likely of it: numbers in proportion to the chance of each share. */
  addStickyBy(column: number, likely: readonly number[], weight: number): void {
    const whole = likely.reduce((sum, one) => sum + one, 0)
    if (whole > 0) for (const [n, one] of likely.entries()) this.addSticky(column, n, (weight * one) / whole)
  }

  /** Adds a sticky pin that came up in just so many looks of those in which it was asked for. */
  addStickyIn(column: number, pushes: number, asked: number, weight: number): void {
    const [on, count] = [bitCount(pushes), bitCount(asked)]
    this.addStickyBy(
      column,
      stickyChances.map(({ share, chance }) => chance * (1 - share) ** on * share ** (count - on)),
      weight,
    )
  }

  /** Adds a column whose strip hides what it does: it is as likely wrong as before. */
  addUnseen(column: number, reader: number, byHand: ByHand, weight: number): void {
    const { dead, high, over, sticky, other } = columnChances[at(readers, reader)]
    const hand = at(byHand.columns, column)
    const right = hand.right * (1 - dead - high - over - sticky)
    const share =
      weight / (right + hand.dead * dead + hand.high * high + hand.over * over + hand.sticky * sticky)
    this.add(column, 'dead', share * hand.dead * dead)
    this.add(column, 'high', share * hand.high * high)
    this.add(column, 'over', share * hand.over * over)
    this.add(column, 'other', share * hand.right * other)
    for (const [n, { chance }] of stickyChances.entries())
      this.addSticky(column, n, share * hand.sticky * sticky * chance)
  }

  addTo(tally: Tally): void {
    for (const column of allColumns) {
      const place = columnPlace(column)
      const weight = (n: number): number => this.weights[(column - 1) * size + n]!
      tally.add(place, [`pin.${column}.low`, `rocker.${column}.dead`], weight(0))
      tally.add(place, [`pin.${column}.high`], weight(1))
      tally.add(place, [`pin.${column}.over`], weight(2))
      tally.add(place, ['other'], weight(3))
      for (const [n, { share }] of stickyChances.entries())
        tally.add(place, [`pin.${column}.sticky=${share}`], weight(named.length + n))
    }
  }
}
