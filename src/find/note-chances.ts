import { chanceOfSlower, sortByHeight, springing } from '../mechanism/gate.ts'
import { constantsBetween, timeOver } from '../mechanism/travel.ts'
import { stiffMs, wrongNotes } from './chances.ts'
import { notes } from './bed-letters.ts'
import type { WideBed } from './wide-bed.ts'

/** How likely each note is of a needle that is selected, plain or unmoved. */
export interface NoteChances {
  readonly selected: readonly number[]
  readonly plain: readonly number[]
  readonly unmoved: readonly number[]
}

export const noteChances = (slip: number): NoteChances => {
  const { other, unmoved, goneSelected, gonePlain } = wrongNotes
  return {
    selected: [1 - slip, slip * other, slip * unmoved, 1],
    plain: [slip * other, 1 - slip, slip * unmoved, 1],
    unmoved: [slip * goneSelected, slip * gonePlain, 1 - slip, 1],
  }
}

/** By note: how likely it is of a needle that is free, that is held, and that is stiff and free. */
export interface LookChances {
  readonly free: readonly number[]
  readonly held: readonly number[]
  readonly stiff: readonly number[]
}

const mixed = (share: number, one: readonly number[], other: readonly number[]): number[] =>
  one.map((chance, n) => share * chance + (1 - share) * (other[n] ?? 0))

/** By look: how likely each note is, where the bar's median time constant is `retainer` ms, 0 for a sound one. */
export const lookChances = (bed: WideBed, retainer: number, all: NoteChances): LookChances[] => {
  const { dimensions } = bed.peaks
  const { gateLag, gate1, buttReturn, catchDepth } = dimensions
  const sorted = (height: number): readonly number[] => all[sortByHeight(height, dimensions)]
  return bed.looks.map(({ view }, n) => {
    const bit = 1 << n
    if (bed.plain & bit) return { free: all.plain, held: all.plain, stiff: all.plain }
    if (bed.all & bit) return { free: all.selected, held: all.selected, stiff: all.selected }
    const dip = bed.dips[n]!
    const time = timeOver(dimensions, gateLag, view.speed)
    const late = dip <= gate1 ? 0 : chanceOfSlower(retainer, time / constantsBetween(dip, gate1))
    const free =
      retainer === 0 ? sorted(springing(dip, time, buttReturn)) : mixed(late, all.selected, all.plain)
    return {
      free,
      held: bed.holds & bit ? sorted(-catchDepth) : free,
      stiff: sorted(springing(dip, time, stiffMs)),
    }
  })
}

/** By look and note, as one list: the chance that the note is a slip, of needles whose chances `by` picks. */
export const slipChances = (
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
