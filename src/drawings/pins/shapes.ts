import { dimensions } from '../../mechanism/dimensions.ts'
import { outline, polyline, px } from '../shared/paths.ts'

/**
 * The shapes of one pin and its rocker, in pixels from the pivot, upright. What the model does not say is this
 * drawing's choice: the head as long as it must be, a thin neck so that a leaning pin clears its hole's edge.
 */
const head = dimensions.pin / 2
const headLength = 1
const shoulder = 0.3
/** Half the neck's thickness in mm. */
export const neckHalf = 0.35
/** How deep the pin reaches into its sleeve, how wide that sleeve is, and how far below the pivot the foot is. */
const inSleeve = 0.5
const sleeve = 0.55
const sleeveTop = 0.15
const foot = 3

/** Angle in radians by which a pin and its rocker lean for a tip at this height pushed aside by `lean` mm. */
export const leanAngle = (height: number, lean: number): number =>
  lean === 0 ? 0 : Math.atan2(lean, Math.max(0.1, height - head))

/** Length of a pin in mm from the pivot to its tip, so that its highest point stays at `height` while it leans. */
export const pinLength = (height: number, angle: number): number => head + (height - head) / Math.cos(angle)

/** A pin with its rounded head. `length` in mm. */
export const pinShape = (length: number, perMm: number): string => {
  const at = (mm: number): number => px(mm * perMm)
  const dome = length - head
  const under = length - headLength
  const r = at(head)
  return (
    `M${at(-neckHalf)},${at(inSleeve)}V${at(-(under - shoulder))}L${-r},${at(-under)}V${at(-dome)}` +
    `A${r},${r} 0 0 1 ${r},${at(-dome)}V${at(-under)}L${at(neckHalf)},${at(-(under - shoulder))}V${at(inSleeve)}Z`
  )
}

/** A rocker: the sleeve in which its pin slides, tapering to its foot. A broken one has lost its foot. */
export const rockerShape = (perMm: number, isDead: boolean): string => {
  const at = (points: [number, number][]): [number, number][] =>
    points.map(([x, y]) => [x * perMm, y * perMm])
  const top: [number, number][] = [
    [-sleeve, -sleeveTop],
    [sleeve, -sleeveTop],
    [sleeve, 0.9],
  ]
  return isDead
    ? outline(at([...top, [0.3, 1.7], [0.1, 1.4], [-0.1, 1.8], [-0.35, 1.5], [-sleeve, 0.9]]))
    : outline(at([...top, [0, foot], [-sleeve, 0.9]]))
}

const cupSteps = 12

/**
 * The cup that a rocker's foot rides in, from the pivot, with the rod at rest. It is the way of the foot itself, so
 * that the foot touches it while the rod goes down by what the rocker gives: flat over the lost motion, then rising.
 * `lost` and the pin's `height` in mm.
 */
export const cupShape = (lost: number, height: number, perMm: number): string => {
  const side = Array.from({ length: cupSteps + 1 }, (_, n): [number, number] => {
    const push = (dimensions.sweepThrow * n) / cupSteps
    const angle = leanAngle(height, push)
    const down = Math.max(0, dimensions.ratio * push - lost)
    return [foot * Math.sin(angle) * perMm, (foot * Math.cos(angle) - down) * perMm]
  })
  return polyline([...side.map(([x, y]): [number, number] => [-x, y]).reverse(), ...side])
}

/** Lowest point of the cup, in mm below the pivot: where its rod begins. */
export const cupBottom = foot

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
