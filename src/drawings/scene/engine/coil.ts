import type { Coil } from './piece.ts'
import { cross, minus, unit } from './vector.ts'

/** Points of a coil a turn. */
const fineness = 8

/** The points through which a coil's wire goes, three numbers each. */
export const coilPoints = ({ ends, radius, turns }: Coil): Float64Array => {
  const [from, to] = ends
  const axis = minus(to, from)
  const side = unit(cross(axis, Math.abs(axis[2]) > Math.hypot(axis[0], axis[1]) ? [0, 1, 0] : [0, 0, 1]))
  const other = unit(cross(unit(axis), side))
  const count = turns * fineness
  const points = new Float64Array(3 * (count + 1))
  for (let n = 0; n <= count; n++) {
    const [share, angle] = [n / count, (2 * Math.PI * n) / fineness]
    const [a, b] = [radius * Math.cos(angle), radius * Math.sin(angle)]
    for (const k of [0, 1, 2] as const)
      points[3 * n + k] = from[k] + axis[k] * share + side[k] * a + other[k] * b
  }
  return points
}
