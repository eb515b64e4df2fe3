import { type Bed, type CardPlace, usualPlace, wholeBed } from './bed.ts'
import type { Card } from './card.ts'
import { dimensions } from './dimensions.ts'
import type { Fault } from './fault.ts'
import { nothingOwn, type Own } from './own.ts'

/** Everything the machine's state depends on. Small, serialisable, and complete: nothing else matters. */
export interface Scenario extends CardPlace {
  /** The card in the reader; null where there is none. */
  readonly card: Card | null
  readonly faults: readonly Fault[]
  /** Carriage speed, mm/s, 50 to 2000. */
  readonly speed: number
  /** Wear, 0 as new to 1 worn out. */
  readonly wear: number
  /** Names the machine whose scatter is drawn; a whole number. */
  readonly seed: number
  readonly bed: Bed
  /** What was measured of this machine; the rest is the training machine's. */
  readonly own: Own
}

/** A sound machine at its ordinary speed, with the whole bed in use. */
export const soundScenario = (card: Card | null): Scenario => ({
  card,
  faults: [],
  speed: dimensions.speed,
  wear: 0,
  seed: 1,
  bed: wholeBed,
  own: nothingOwn,
  ...usualPlace,
})
