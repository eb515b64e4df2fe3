import { test } from '../browser/page.ts'

/** The value below which this part of the times lies: 0.5 for the median. NaN for no times. */
export const shareOf = (times: readonly number[], part: number): number =>
  times.toSorted((one, other) => one - other)[Math.floor(part * (times.length - 1))] ?? NaN

/** Median, 95th percentile and most of some times in ms. */
export const spread = (times: readonly number[]): string =>
  `${[0.5, 0.95, 1].map((part) => shareOf(times, part).toFixed(1)).join(', ')} ms`

/** A figure for the table that `npm run measure` prints; `met` is whether it reaches the aim. */
export const note = (what: string, figure: string, aim: string, met: boolean): void => {
  test.info().annotations.push({ type: 'figure', description: JSON.stringify({ what, figure, aim, met }) })
}
