import { cams, dimensions } from '../../mechanism/dimensions.ts'
import { harmonic } from '../../mechanism/frame.ts'

/** The carriage and its cams as pictures show them, in needles behind the presser's trailing edge. */

/** Half the carriage's length, in needles. */
export const carriageHalf = 10.5

/** Length of the presser, ramp and flat, in needles. */
const presserLength = cams.presserFlat + cams.presserRamp

/** Where each cam begins and ends. */
export const camSpans = {
  presser: [-presserLength, 0],
  'gate.1': [dimensions.gateLag, dimensions.gateLag + cams.gate1Length],
  'gate.2': [cams.gate2Start, cams.gate2Start + cams.gate2Length],
} as const

/** The cams by the ids of their parts. */
export type CamId = keyof typeof camSpans

/** The middle of a cam. */
export const camMiddle = (id: CamId): number => (camSpans[id][0] + camSpans[id][1]) / 2

/**
 * The presser's lower edge where it dips the butts by `dip` mm, from its flat to the end of its ramp: each point's
 * distance ahead of its trailing edge, in needles, and its depth below the butts' rest level, in mm.
 */
export const presserRamp = (
  dip: number,
  steps: number,
): { readonly ahead: number; readonly depth: number }[] =>
  Array.from({ length: steps + 1 }, (_, n) => ({
    ahead: cams.presserFlat + (n / steps) * cams.presserRamp,
    depth: dip * harmonic(1 - n / steps),
  }))
