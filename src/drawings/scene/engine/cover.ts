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

/** Where an edge crosses a row of the picture; null where it does not. Of its two ends, the lower one counts. */
const crossingOf = (one: PicturePoint, other: PicturePoint, y: number): number | null =>
  one[1] > y === other[1] > y ? null : ((other[0] - one[0]) * (y - one[1])) / (other[1] - one[1]) + one[0]

/** Where a loop's edges cross a row, from the left: one is in the loop from the first to the second, and so on. */
export const crossingsOf = (loop: readonly PicturePoint[], y: number): readonly number[] => {
  const crossings: number[] = []
  for (let n = 0, last = loop.length - 1; n < loop.length; last = n++) {
    const x = crossingOf(loop[n]!, loop[last]!, y)
    if (x !== null) crossings.push(x)
  }
  return crossings.sort((one, next) => one - next)
}

const isInLoop = (point: PicturePoint, loop: readonly PicturePoint[]): boolean => {
  let isIn = false
  for (let n = 0, last = loop.length - 1; n < loop.length; last = n++) {
    const x = crossingOf(loop[n]!, loop[last]!, point[1])
    if (x !== null && point[0] < x) isIn = !isIn
  }
  return isIn
}

/** Whether a point is as near as this to the line from one point to another. */
const isNear = (point: PicturePoint, from: PicturePoint, to: PicturePoint, distance: number): boolean => {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const [x, y] = [point[0] - from[0], point[1] - from[1]]
  const length = dx * dx + dy * dy
  const share = length === 0 ? 0 : Math.min(1, Math.max(0, (x * dx + y * dy) / length))
  return (x - dx * share) ** 2 + (y - dy * share) ** 2 <= distance ** 2
}

/** Whether a point is within a margin, in pixels, of the edge that a line has round a loop. */
const isAtEdge = (point: PicturePoint, loop: readonly PicturePoint[], margin: number): boolean =>
  loop.some((from, n) => isNear(point, from, loop[(n + 1) % loop.length]!, margin))

/** Whether something covers a point of the picture, with a margin round it in pixels. */
export const isCovered = ({ box, loops, wire }: Cover, point: PicturePoint, margin: number): boolean => {
  if (point[0] < box[0] - margin || point[0] > box[2] + margin) return false
  if (point[1] < box[1] - margin || point[1] > box[3] + margin) return false
  if (wire) return isNear(point, wire.from, wire.to, wire.radius + margin)
  return loops.some((loop) => isInLoop(point, loop) || (margin > 0 && isAtEdge(point, loop, margin)))
}

/** Says which piece one sees at a point of the picture. */
export type Seen = (point: PicturePoint) => number | null

/** What one sees of these pieces, which are in the order in which they are drawn. */
export const seenAt = (camera: Camera, drawn: readonly Drawn[]): Seen => {
  const covers = drawn.map(({ piece, shape }) => coverOf(camera, piece, shape)).reverse()
  return (point) => covers.find((cover) => isCovered(cover, point, 0))?.piece ?? null
}
