import type { Needle } from '../mechanism/indices.ts'
import type { Cause, Place } from './place.ts'

/** One way in which a place may be wrong: what no look from outside distinguishes is one way. */
export interface Way {
  /** The causes, any one of which it may be. */
  readonly causes: readonly Cause[]
  /** Chance of this way; the ways of a place add up to the chance that the place is wrong. */
  readonly probability: number
}

/** What the notes say about a place. */
export interface PlaceFinding {
  readonly place: Place
  /** Chance that it is wrong. */
  readonly wrong: number
  /** The same before the notes, under the oil and the reader that they speak for; null for what reaches the whole bed. */
  readonly before: number | null
  /** The likeliest way first. */
  readonly ways: readonly Way[]
}

/** How old the oil is, each with its chance; they add up to 1. */
export const oils = ['fresh', 'old', 'set'] as const
export type Oil = (typeof oils)[number]

/** Places of which one is wrong, and nothing says which. */
export interface Together {
  readonly places: readonly Place[]
  /** Chance that at least one of them is wrong. */
  readonly wrong: number
}

/** A note that is likelier a slip, or something that no place explains, than what the machine did. */
export interface Unexplained {
  /** Which of the query's passes, from 0. */
  readonly pass: number
  readonly needle: Needle
  readonly chance: number
}

/** A whole machine: what is wrong with it, by kind; amounts, oil and wear are summed over. */
export interface RankedMachine {
  /** Each a way's causes; none for a sound machine, null for all machines that are not listed. */
  readonly faults: readonly (readonly Cause[])[] | null
  readonly probability: number
}

/** What may be wrong with a machine. */
export interface Finding {
  /** Places with a chance of at least 0.01, the likeliest first. */
  readonly places: readonly PlaceFinding[]
  readonly oil: Readonly<Record<Oil, number>>
  /** Wear from 0 to 1; `low` to `high` holds nine tenths. */
  readonly wear: { readonly mean: number; readonly low: number; readonly high: number }
  readonly together: readonly Together[]
  readonly unexplained: readonly Unexplained[]
  /** At most 20 whole machines, the likeliest first, and all others as one; they add up to 1. */
  readonly ranked: readonly RankedMachine[]
  /** Whether the sums left nothing out: loose pivots are summed with a spread that is close, but not exact. */
  readonly isExact: boolean
}
