import type { Trials } from '../mechanism/trials.ts'
import { percent } from './figures/margins.ts'

/** The closed form's chance; null where it does not cover all that is wrong. */
export const closedFormWords = (chance: number | null): string =>
  chance === null
    ? 'not here: a fault of a single part, or of the belt, has no such formula'
    : percent(chance)

/** The trials' share, with twice the standard error. */
export const trialsWords = ({ machines, share, error }: Trials): string =>
  `${percent(share)}, give or take ${(200 * error).toFixed(1)} points, on ${machines} machines`

/** The largest difference of the two that chance explains, in standard errors; `rounding` is added as a share. */
const mostErrors = 4
const rounding = 0.002

/** What the two numbers mean together. */
export const chanceVerdict = (chance: number | null, trials: Trials): string => {
  const what = 'This is the share of needles under a hole that are selected, over machines of this wear.'
  if (chance === null) return `${what} Each machine’s parts are drawn at random from a seed.`
  const apart = Math.abs(chance - trials.share)
  return apart <= mostErrors * trials.error + rounding
    ? `${what} The formula and the trials agree.`
    : `${what} The formula and the trials lie ${(100 * apart).toFixed(1)} points apart, which is more than chance explains.`
}
