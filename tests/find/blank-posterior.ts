import type { Posterior } from '@/find/posterior.ts'
import { Tally } from '@/find/tally.ts'

/** What is said of a machine of which nothing was seen, but for what is given. */
export const posteriorOf = (more: Partial<Posterior> = {}): Posterior => ({
  tally: new Tally(),
  oil: { fresh: 0.5, old: 0.3, set: 0.2 },
  wear: new Float64Array(15),
  reader: Float64Array.from([0.5, 0.3, 0.2]),
  rightStrips: new Float64Array(8).fill(1),
  wide: [],
  slips: new Float64Array(),
  ...more,
})
