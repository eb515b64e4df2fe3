import type { Dimensions } from './dimensions.ts'

/** Dimensions in mm of a machine that wear moves, at wear 0 (as new) to 1 (worn out). */
export const wornDimensions = (dimensions: Dimensions, wear: number) => ({
  sweepEdge: dimensions.sweepEdge + 0.75 * wear,
  lost: dimensions.lost + 0.45 * wear,
  presser: {
    right: dimensions.presserRight - 0.35 * wear,
    left: dimensions.presserLeft - 0.35 * wear,
  },
  reach: dimensions.reach + 0.1 * wear,
})

/**
 * Standard deviations in mm, part by part. They are none at wear 0, where the machine is the drawing itself, and begin
 * with the first wear.
 */
export const scatter = (wear: number) => {
  const deviation = (least: number, more: number): number => (wear === 0 ? 0 : least + more * wear)
  return {
    pin: deviation(0.03, 0.12),
    lost: deviation(0.02, 0.08),
    catch: deviation(0.02, 0.05),
    butt: deviation(0.02, 0.05),
  }
}

/** Log-normal spread of the butts' time constants with a worn retainer bar: the deviation of the logarithm. */
export const retainerSpread = 0.5
