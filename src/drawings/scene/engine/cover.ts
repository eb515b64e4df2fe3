import type { PicturePoint } from '../../shared/paths.ts'
import { type Camera, project } from './camera.ts'
import type { Drawn } from './leaf.ts'
import type { Shape } from './piece.ts'
import { dot } from './vector.ts'

/** What a piece covers of the picture: surfaces, and discs along wires, in the order in which it was drawn. */
export interface Cover {
  readonly piece: number
  readonly box: readonly [left: number, top: number, right: number, bottom: number]
  readonly loops: readonly (readonly PicturePoint[])[]
  readonly wire: { readonly from: PicturePoint; readonly to: PicturePoint; readonly radius: number } | null
}

const boxOf = (points: readonly PicturePoint[], margin: number): Cover['box'] => {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  return [
    Math.min(...xs) - margin,
    Math.min(...ys) - margin,
    Math.max(...xs) + margin,
    Math.max(...ys) + margin,
  ]
}

/** What a shape covers of the picture. */
export const coverOf = (camera: Camera, piece: number, shape: Shape): Cover => {
  if (shape.kind === 'hull') {
    const points = shape.points.map((point) => project(camera, point))
    const loops = shape.faces
      .filter(({ normal, kind }) => kind !== 'joint' && dot(normal, camera.toward) > 1e-6)
      .map(({ corners }) => corners.map((corner) => points[corner]!))
    return { piece, box: boxOf(points, 0), loops, wire: null }
  }
  const [from, to] = [project(camera, shape.ends[0]), project(camera, shape.ends[1])]
  const radius = shape.radius * camera.scale
  return { piece, box: boxOf([from, to], radius), loops: [], wire: { from, to, radius } }
}

const isInLoop = ([x, y]: PicturePoint, loop: readonly PicturePoint[]): boolean => {
  let isIn = false
  for (let n = 0, last = loop.length - 1; n < loop.length; last = n++) {
    const [x1, y1] = loop[n]!
    const [x2, y2] = loop[last]!
    if (y1 > y !== y2 > y && x < ((x2 - x1) * (y - y1)) / (y2 - y1) + x1) isIn = !isIn
  }
  return isIn
}

const isOnWire = (
  [x, y]: PicturePoint,
  { from, to, radius }: NonNullable<Cover['wire']>,
  margin: number,
): boolean => {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const length = dx * dx + dy * dy
  const share =
    length === 0 ? 0 : Math.min(1, Math.max(0, ((x - from[0]) * dx + (y - from[1]) * dy) / length))
  return Math.hypot(x - from[0] - dx * share, y - from[1] - dy * share) <= radius + margin
}

/** Whether a point is within a margin, in pixels, of the edge that a line has round a loop. */
const isAtEdge = (point: PicturePoint, loop: readonly PicturePoint[], margin: number): boolean =>
  loop.some((from, n) => isOnWire(point, { from, to: loop[(n + 1) % loop.length]!, radius: 0 }, margin))

/** Whether something covers a point of the picture, with a margin round it in pixels. */
export const isCovered = ({ box, loops, wire }: Cover, point: PicturePoint, margin: number): boolean => {
  const [[x, y], [left, top, right, bottom]] = [point, box]
  if (x < left - margin || x > right + margin || y < top - margin || y > bottom + margin) return false
  if (wire) return isOnWire(point, wire, margin)
  return loops.some((loop) => isInLoop(point, loop) || (margin > 0 && isAtEdge(point, loop, margin)))
}

/** Says which piece one sees at a point of the picture. */
export type Seen = (point: PicturePoint) => number | null

/** What one sees of these pieces, which are in the order in which they are drawn. */
export const seenAt = (camera: Camera, drawn: readonly Drawn[]): Seen => {
  const covers = drawn.map(({ piece, shape }) => coverOf(camera, piece, shape)).reverse()
  return (point) => covers.find((cover) => isCovered(cover, point, 0))?.piece ?? null
}
