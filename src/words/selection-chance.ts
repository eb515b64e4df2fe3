import type { Trials } from '../mechanism/trials.ts'
import { percent } from './figures/margins.ts'

/** The chance as the closed form gives it; null where it does not take in all that is wrong. */
export const workedOutWords = (chance: number | null): string =>
  chance === null
    ? 'not here: a fault of a single part, or of the belt, has no such formula'
    : percent(chance)

/** What trying came to, with its doubt: twice the standard error. */
export const triedWords = ({ machines, share, error }: Trials): string =>
  `${percent(share)}, give or take ${(200 * error).toFixed(1)} points, on ${machines} machines`

/** How far the two may lie apart by chance, in standard errors; the little more is for rounding. */
const most = 4
const rounding = 0.002

/** What the two numbers together say. */
export const chanceVerdict = (chance: number | null, trials: Trials): string => {
  const what = 'This is the share of needles under a hole that are selected, over machines of this wear.'
  if (chance === null) return `${what} Each machine’s parts are drawn anew from a seed.`
  const apart = Math.abs(chance - trials.share)
  return apart <= most * trials.error + rounding
    ? `${what} The formula and the trials agree.`
    : `${what} The formula and the trials lie ${(100 * apart).toFixed(1)} points apart, which is more than chance explains.`
}
