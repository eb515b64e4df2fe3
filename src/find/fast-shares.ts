import { at } from '../mechanism/lookup.ts'
import { stickyChances } from './chances.ts'
import { type Choices, choicesOf } from './choices.ts'
import type { ColumnSums } from './column-sums.ts'
import { type Followers, valuesOf } from './follower-values.ts'
import { columnStates, partsOf, setValue, stateCount } from './fast-lines.ts'
import { followersOf, stripColumns } from './frame.ts'
import { overSets } from './strip-sums.ts'
import type { StripShares } from './strip-shares.ts'
import type { Tally } from './tally.ts'

/** Hidden states, and sets of columns that stay pushed over, with a smaller weight, and choices of looks with one, say nothing. */
const leastSet = 1e-8
const leastChosen = 1e-3

const index = Object.fromEntries(columnStates.map((state, n) => [state, n])) as Record<
  (typeof columnStates)[number],
  number
>

/** Weights of what a strip's columns may be, by certainty, set of columns that stay over, column, and state. */
type Weights = Float64Array[]

/** Adds the hole of the card that a look's row may have wrong. */
const addHole = (
  { state: { frame } }: StripShares,
  tally: Tally,
  column: number,
  row: number,
  weight: number,
) => {
  const { bed } = frame
  const look = 31 - Math.clz32(row & -row)
  const { view } = at(bed.looks, look)
  if (!view.card || view.shift === null) return
  const own = ((view.pass - 1 + view.shift) % view.card.length) + 1
  const isBlocked = ((bed.pushed[column] ?? 0) & (1 << look)) !== 0
  tally.add(
    'card',
    [isBlocked ? `card.blocked.${own}.${column + 1}` : `card.torn.${own}.${column + 1}`],
    weight,
  )
}

/** How looks were chosen, each with the chance `share`, as far as that is not known yet. */
const chosenOf = (
  { sums }: StripShares,
  column: number,
  over: number,
  certainty: number,
  followers: Followers,
  choices: number,
  share: number,
): Choices => {
  const key = `${column} ${over} ${certainty} ${choices} ${share}`
  let found = sums.chosen.get(key)
  if (!found) {
    found = choicesOf(valuesOf(at(sums.noted, certainty).needles, followers), choices, share)
    sums.chosen.set(key, found)
  }
  return found
}

/** Adds what a column may be, with the weight of each state, where the pins of `over` stay pushed over. */
const addColumn = (
  shares: StripShares,
  tally: Tally,
  column: number,
  over: number,
  certainty: number,
  weights: Float64Array,
  sums: ColumnSums | number,
): void => {
  const { state, columns, offers } = shares
  const { bed, setting } = state.frame
  const followers = followersOf(state.frame, column, over)
  const [asked, pushes] = [bed.pushed[column]! & bed.meets, bed.pushes & bed.meets]
  const push = (offered: number, weight: number): void =>
    at(offers, certainty).add(followers, offered, weight)
  for (const [n, name] of columnStates.entries()) columns.add(column, name, weights[n]!)
  push(0, weights[index.worn]! + weights[index.dead]! + weights[index.over]!)
  if (typeof sums === 'number') return
  push(asked, weights[index.sound]!)
  push(pushes, weights[index.high]!)
  const holes = sums.holes.reduce((a, b) => a + b, 0)
  if (weights[index.hole]! > 0)
    for (const [n, row] of setting.rows.entries()) {
      const weight = (weights[index.hole]! * at(sums.holes, n)) / holes
      addHole(shares, tally, column, row, weight)
      push(asked ^ (row & pushes), weight)
    }
  const choose = (choices: number, share: number, weight: number): void => {
    if (weight < leastChosen) return
    for (const { offered, chance } of chosenOf(shares, column, over, certainty, followers, choices, share))
      push(offered, weight * chance)
  }
  const sticky = sums.stickyBy.map((value, n) => value * at(stickyChances, n).chance)
  const whole = sticky.reduce((a, b) => a + b, 0)
  columns.addStickyBy(column, sticky, weights[index.sticky]!)
  if (whole > 0)
    for (const [n, value] of sticky.entries())
      choose(asked, 1 - at(stickyChances, n).share, (weights[index.sticky]! * value) / whole)
  choose(pushes, 0.5, weights[index.other]!)
}

/** By certainty: where the weights of a set's column begin. */
const placeOf = (set: number, n: number): number => (set * 3 + n) * stateCount

/**
 * Adds what a strip says that follows at once, `units` being the weight of each hidden state for a unit of its sum; gives the
 * chance that it and its columns are right.
 */
export const addFastShares = (shares: StripShares, units: Float64Array, tally: Tally): number => {
  const { state, strip, sums, block } = shares
  const { peaks } = state.frame.bed
  const all: Weights = sums.noted.map(() => new Float64Array(overSets.length * 3 * stateCount))
  let right = 0
  for (const [h, hidden] of state.hidden.entries()) {
    const unit = units[h]!
    if (!(unit * sums.fast[h]! > leastSet)) continue
    const own = at(all, all.length === 1 ? 0 : peaks.meanCertainty(hidden.wear, hidden.pivots))
    for (const [set, lines] of sums.lines[hidden.reader]!.entries()) {
      const product = unit * setValue(at(at(sums.totals, hidden.reader), set), hidden, peaks)
      if (!(product > leastSet)) continue
      const parts = lines.map((line) => partsOf(line, hidden, peaks))
      const totals = parts.map((part) => part.reduce((a, b) => a + b, 0))
      block.addFast(parts, totals, product)
      let isRight = set === 0 ? product : 0
      for (const [n, part] of parts.entries()) {
        const share = product / totals[n]!
        const from = placeOf(set, n)
        for (let s = 0; s < stateCount; s++) own[from + s]! += share * part[s]!
        isRight *= (part[index.sound]! + part[index.worn]! + part[index.hole]!) / totals[n]!
      }
      right += isRight
    }
  }
  for (const [certainty, weights] of all.entries())
    for (const set of overSets)
      for (const [n, column] of stripColumns(strip).entries()) {
        const from = placeOf(set, n)
        const own = weights.subarray(from, from + stateCount)
        if (own.some((weight) => weight > 0))
          addColumn(shares, tally, column, set, certainty, own, at(at(sums.columns, set), n))
      }
  return right
}
