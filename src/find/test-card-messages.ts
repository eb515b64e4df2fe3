import type { Progress } from './test-card.ts'
import type { Card } from '../mechanism/card.ts'

/** The worker is asked for a test card of this seed. */
export interface CardRequest {
  readonly seed: number
}

/** A test card that was computed, as the page shows it. */
export interface CardFound {
  readonly card: Card
  /** Speeds at which it is passed from end to end, in mm/s. */
  readonly runs: readonly number[]
  readonly classes: number
  readonly most: number
  readonly hidden: number
  readonly fewest: number
  /** The link's text of a search that waits for its passes. */
  readonly session: string
  readonly ms: number
}

export type CardMessage =
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'found'; readonly found: CardFound }
