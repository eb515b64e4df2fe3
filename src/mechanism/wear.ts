import { dimensions } from './dimensions.ts'

/** Dimensions in mm that wear moves, at wear 0 (as new) to 1 (worn out). */
export const wornDimensions = (wear: number) => ({
  sweepEdge: dimensions.sweepEdge + 0.75 * wear,
  lost: dimensions.lost + 0.45 * wear,
  presser: dimensions.presser - 0.35 * wear,
  reach: dimensions.reach + 0.1 * wear,
})

/** Standard deviations in mm, part by part, at wear 0 to 1. */
export const scatter = (wear: number) => ({
  pin: 0.03 + 0.12 * wear,
  lost: 0.02 + 0.08 * wear,
  catch: 0.02 + 0.05 * wear,
  butt: 0.02 + 0.05 * wear,
})

/** Log-normal spread of the butts' time constants with a worn retainer bar: the deviation of the logarithm. */
export const retainerSpread = 0.5
