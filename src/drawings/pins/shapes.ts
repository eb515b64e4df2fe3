import { dimensions } from '../../mechanism/dimensions.ts'
import { outline, polyline, px } from '../shared/paths.ts'

/**
 * The shapes of a pin's front leg and of its rocker, seen from the front, in pixels from where the leg comes through the
 * top plate at rest. What the model does not say is this drawing's choice. Lengths in mm; down is positive.
 */
const leg = dimensions.pin / 2
/** How far below the top plate a leg ends, from its tip: there the wire goes back to the other leg. */
const legBelow = 1.75
/** The rocker: half its thickness, its top, the middle that it turns about, and its lower end, where its rod begins. */
const rocker = { half: 0.24, top: 0.85, pivot: 2.4, foot: 3.95 } as const

/** Level of the rockers' middles, in mm below the top plate's upper side. */
export const pivotDepth = rocker.pivot

/** A front leg with its rounded tip, `height` mm above the plate. */
export const legShape = (height: number, perMm: number): string => {
  const at = (mm: number): number => px(mm * perMm)
  const r = at(leg)
  return (
    `M${-r},${at(legBelow - 0.35)}V${at(leg - height)}A${r},${r} 0 0 1 ${r},${at(leg - height)}` +
    `V${at(legBelow - 0.35)}A${r},${at(0.35)} 0 0 1 ${-r},${at(legBelow - 0.35)}Z`
  )
}

/** The most lost motion that there is room for between leg and rocker, in mm. */
const mostGap = 1.1

/** Where a rocker turns, in mm to the right of its pin's leg at rest: they touch after the lost motion. */
export const pivotAside = (lost: number): number => -leg - rocker.half - Math.min(lost, mostGap)

/** A rocker's middle line, its rod's place and its outline, for what it gives. A broken one has lost its top. */
export const rockerShape = (lost: number, out: number, perMm: number, isDead: boolean): string => {
  const x = pivotAside(lost)
  const { half, top, pivot, foot } = rocker
  const head: [number, number][] = isDead
    ? [
        [x - half, pivot - 0.55],
        [x - half * 0.2, pivot - 0.75],
        [x + half, pivot - 0.5],
      ]
    : [
        [x - half - out, top],
        [x + half - out, top],
      ]
  const points: [number, number][] = [
    ...head,
    [x + half, pivot],
    [x + half + out, foot],
    [x - half + out, foot],
    [x - half, pivot],
  ]
  return outline(points.map(([right, down]) => [right * perMm, down * perMm]))
}

/** A rocker's rod: from its lower end down, as far as it has gone to the right. `end` in pixels. */
export const rodShape = (lost: number, out: number, perMm: number, end: number): string => {
  const x = (pivotAside(lost) + out) * perMm
  return polyline([
    [x, rocker.foot * perMm],
    [x, end],
  ])
}

/** The part of a pin, seen from above, that shows through a hole: where the two circles overlap. */
export const lens = (
  pin: readonly [number, number],
  r: number,
  hole: readonly [number, number],
  R: number,
): string => {
  const [dx, dy] = [hole[0] - pin[0], hole[1] - pin[1]]
  const apart = Math.hypot(dx, dy)
  if (apart >= r + R) return ''
  if (apart <= R - r)
    return `M${px(pin[0] - r)},${px(pin[1])}a${px(r)},${px(r)} 0 1 0 ${px(2 * r)},0a${px(r)},${px(r)} 0 1 0 ${px(-2 * r)},0Z`
  const along = (apart * apart + r * r - R * R) / (2 * apart)
  const across = Math.sqrt(Math.max(0, r * r - along * along))
  const [ux, uy] = [dx / apart, dy / apart]
  const from = [pin[0] + ux * along + uy * across, pin[1] + uy * along - ux * across] as const
  const to = [pin[0] + ux * along - uy * across, pin[1] + uy * along + ux * across] as const
  const large = along < 0 ? 1 : 0
  return (
    `M${px(from[0])},${px(from[1])}A${px(r)},${px(r)} 0 ${large} 1 ${px(to[0])},${px(to[1])}` +
    `A${px(R)},${px(R)} 0 0 1 ${px(from[0])},${px(from[1])}Z`
  )
}
