import type { PicturePoint } from '../../shared/paths.ts'
import { type Camera, project } from './camera.ts'
import { drawHull, hatchStep } from './hull-ink.ts'
import type { Pen } from './pen.ts'
import type { Coil, Shape, Wire } from './piece.ts'
import { cross, minus, unit } from './vector.ts'

/** Points of a coil a turn. */
const fineness = 8

const drawCoil = (camera: Camera, { ends, radius, turns }: Coil, pen: Pen): void => {
  const [from, to] = ends
  const axis = minus(to, from)
  const side = unit(cross(axis, Math.abs(axis[2]) > Math.hypot(axis[0], axis[1]) ? [0, 1, 0] : [0, 0, 1]))
  const other = unit(cross(unit(axis), side))
  const count = turns * fineness
  pen.spring(
    Array.from({ length: count + 1 }, (_, n) => {
      const [share, angle] = [n / count, (2 * Math.PI * n) / fineness]
      const [a, b] = [radius * Math.cos(angle), radius * Math.sin(angle)]
      return project(camera, [
        from[0] + axis[0] * share + side[0] * a + other[0] * b,
        from[1] + axis[1] * share + side[1] * a + other[1] * b,
        from[2] + axis[2] * share + side[2] * a + other[2] * b,
      ])
    }),
  )
}

/** The joints of wires that one drawing has drawn already, by their places. */
export type Joints = Set<number>

/** Which ends of a wire have no outline of their own: they go on in a piece that is drawn already. */
const openEnds = ({ joined }: Wire, ends: readonly PicturePoint[], joints: Joints): [boolean, boolean] => {
  const [from, to] = ends.map(([x, y], n) => {
    if (!joined[n]) return false
    const key = Math.round(x * 5) * 2 ** 20 + Math.round(y * 5)
    const isKnown = joints.has(key)
    joints.add(key)
    return isKnown
  })
  return [from!, to!]
}

/** Short lines across a wire, as a hatching. */
const wireHatching = (
  [x1, y1]: PicturePoint,
  [x2, y2]: PicturePoint,
  radius: number,
  step: number,
): readonly PicturePoint[] => {
  const length = Math.hypot(x2 - x1, y2 - y1)
  if (length < step) return []
  const [right, down] = [(x2 - x1) / length, (y2 - y1) / length]
  return Array.from({ length: Math.floor(length / step) }, (_, n): readonly PicturePoint[] => {
    const [x, y] = [x1 + right * (n + 0.5) * step, y1 + down * (n + 0.5) * step]
    // On the slant, so that they are not taken for the turns of a spring.
    const [aside, on] = [[-down * radius, right * radius] as const, [right * radius, down * radius] as const]
    return [
      [x - aside[0] - on[0], y - aside[1] - on[1]],
      [x + aside[0] + on[0], y + aside[1] + on[1]],
    ]
  }).flat()
}

/** Draws one shape as a camera sees it; what is wrong is hatched. */
export const drawInk = (camera: Camera, shape: Shape, pen: Pen, joints: Joints, isWrong: boolean): void => {
  switch (shape.kind) {
    case 'hull':
      drawHull(camera, shape, pen, isWrong)
      break
    case 'wire': {
      const [from, to] = [project(camera, shape.ends[0]), project(camera, shape.ends[1])]
      const radius = shape.radius * camera.scale
      pen.wire(from, to, radius, openEnds(shape, [from, to], joints))
      const lines = isWrong ? wireHatching(from, to, radius, hatchStep * camera.line) : []
      if (lines.length > 0) pen.lines('wrong', lines)
      break
    }
    case 'coil':
      drawCoil(camera, shape, pen)
      break
  }
}
