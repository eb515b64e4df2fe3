import type { Condition } from '../../mechanism/condition.ts'
import { cams, gate2Start } from '../../mechanism/dimensions.ts'
import { harmonic } from '../../mechanism/frame.ts'
import { leadingSpan } from './cams.ts'
import type { NeedleMark } from './needle-mark.ts'
import { outline, type PicturePoint, px } from './paths.ts'
import type { Shape } from './figure-contract.ts'

/** Needles and the cams that move them, seen from above, wherever a picture has them. */
export interface NeedlePlan {
  readonly shape: Shape
  /** The butts' line, with the needles' tails above and their hooks below it, in the picture's pixels. */
  readonly line: number
  readonly tail: number
  readonly hook: number
}

/** A needle from above with its butt at `y`: tail, stem and the hook at its front end, open to the right. */
export const needleOutline = (plan: NeedlePlan, [x, y]: PicturePoint): string => {
  const bend = plan.shape === 'wide' ? 3 : 2.2
  return `M${px(x)},${px(y + plan.tail - plan.line)}V${px(y + plan.hook - plan.line - bend)}a${bend},${bend} 0 0 0 ${2 * bend},0v${-bend}`
}

/** How a needle's butt looks from above, by the needle's mark. */
export const buttLooks = ['', 'out', 'selected', 'set', 'wrong'] as const
type ButtLook = (typeof buttLooks)[number]

export const buttLookOf = (mark: NeedleMark): ButtLook => {
  if (mark === 'missed' || mark === 'extra' || mark === 'unmoved') return 'wrong'
  return mark === 'out' || mark === 'selected' || mark === 'set' ? mark : ''
}

/** Where the carriage is: the place in the picture of a point so many needles behind the presser, and the scale. */
interface CamPlace {
  readonly plan: NeedlePlan
  readonly behindX: (behind: number) => number
  /** Pixels a millimetre. */
  readonly perMm: number
}

/** A wall along which butts slide, and its thickness behind. `share` goes from its begin to its end. */
const wall = (
  { plan, behindX, perMm }: CamPlace,
  [from, to]: readonly [number, number],
  side: 1 | -1,
  at: (share: number) => { readonly lift: number; readonly thick: number },
): string => {
  const half = plan.shape === 'wide' ? 5 : 4
  const steps = 12
  const face: PicturePoint[] = []
  const back: PicturePoint[] = []
  for (let n = 0; n <= steps; n++) {
    const share = n / steps
    const { lift, thick } = at(share)
    const x = behindX(from + share * (to - from))
    const y = plan.line + lift * perMm + side * half
    face.push([x, y])
    back.unshift([x, y + side * (1.5 + thick * half)])
  }
  return outline([...face, ...back])
}

/** A gate: the butts slide along it to their place. `side` -1: its wall faces the back. */
const gateWall = (place: CamPlace, from: number, length: number, lift: number, side: 1 | -1): string => {
  const extra = place.plan.shape === 'wide' ? 1.4 : 1.5
  return wall(place, [from, from + length], side, (share) => ({
    lift: lift * harmonic(share),
    thick: share * extra,
  }))
}

/** Both gates. Gates that stand aside are above all butts, and no wall to them. */
export const gateWalls = (place: CamPlace, condition: Condition): string =>
  condition.carriagePlain
    ? ''
    : gateWall(place, condition.dimensions.gateLag, cams.gate1Length, -cams.plainTravel, 1) +
      gateWall(place, gate2Start(condition.dimensions), cams.gate2Length, cams.selectedTravel, -1)

/**
 * The leading cams: they bring butts that were set out back to the line before the presser comes. Each is the widest
 * ahead; one lies before the butts that are forward, one behind those that are back.
 */
export const leadingWalls = (place: CamPlace): string =>
  ([1, -1] as const)
    .map((side) =>
      wall(place, leadingSpan, side, (share) => ({
        lift: (side === 1 ? cams.selectedTravel : -cams.plainTravel) * harmonic(1 - share),
        thick: 1 - share,
      })),
    )
    .join('')
