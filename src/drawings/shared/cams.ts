import type { Way } from '../../mechanism/bed.ts'
import { type Condition, presserOf } from '../../mechanism/condition.ts'
import { cams, type Dimensions, gate2Start, sortedAfter } from '../../mechanism/dimensions.ts'
import { harmonic } from '../../mechanism/frame.ts'

/** The carriage and its cams as pictures show them, in needles behind the presser's trailing edge. */

/** Half the carriage's length, in needles. */
export const carriageHalf = 10.5

/** Length of the presser, ramp and flat, in needles. */
const presserLength = cams.presserFlat + cams.presserRamp

/** Where each cam of a machine begins and ends. */
export const camSpansOf = (dimensions: Dimensions): Readonly<Record<CamId, readonly [number, number]>> => ({
  presser: [-presserLength, 0],
  'gate.1': [dimensions.gateLag, dimensions.gateLag + cams.gate1Length],
  'gate.2': [gate2Start(dimensions), sortedAfter(dimensions)],
})

/** Where the leading cams begin and end, ahead of the presser: they bring back to the line what the last pass set out. */
export const leadingSpan = [-presserLength - cams.gather, -presserLength] as const

/** The cams by the ids of their parts. */
export const camIds = ['presser', 'gate.1', 'gate.2'] as const
export type CamId = (typeof camIds)[number]

/** The middle of a cam of a machine. */
export const camMiddle = (dimensions: Dimensions, id: CamId): number => {
  const [from, to] = camSpansOf(dimensions)[id]
  return (from + to) / 2
}

/** How far above the butts' rest level a cam that stands aside is drawn, in mm. */
export const asideHeight = 0.3

/** Depth of the lower edge of a gate below the butts' rest level, in mm; above it, negative, where the gates stand aside. */
export const gateEdge = (condition: Condition, id: 'gate.1' | 'gate.2'): number =>
  condition.carriagePlain ? -asideHeight : id === 'gate.1' ? condition.gate1 : condition.dimensions.gate2

/** A point of the presser's lower edge: how far ahead of its trailing edge, in needles, and how far below the butts' rest level, in mm. */
interface EdgePoint {
  readonly ahead: number
  readonly depth: number
}

/** The presser's lower edge where it dips the butts by `dip` mm, from its trailing edge over its flat to the end of its ramp. */
export const dipEdge = (dip: number, steps: number): EdgePoint[] => [
  { ahead: 0, depth: dip },
  ...Array.from({ length: steps + 1 }, (_, n) => ({
    ahead: cams.presserFlat + (n / steps) * cams.presserRamp,
    depth: dip * harmonic(1 - n / steps),
  })),
]

/** The presser's lower edge as it is in a pass of this way; level and above the rest level where it stands aside. */
export const presserEdge = (condition: Condition, way: Way, steps: number): EdgePoint[] =>
  condition.carriagePlain
    ? [
        { ahead: 0, depth: -asideHeight },
        { ahead: presserLength, depth: -asideHeight },
      ]
    : dipEdge(Math.max(0, presserOf(condition, way)), steps)
