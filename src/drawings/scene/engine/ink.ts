import type { PicturePoint } from '../../shared/paths.ts'
import { type Camera, isTiny, project } from './camera.ts'
import type { Coil, FaceKind, Hull, Mark, Shape, Wire } from './piece.ts'
import { cross, dot, minus, unit, type Vector } from './vector.ts'

/** Lines of a drawing by their weight. */
export type Weight = 'outline' | 'crease' | 'mark' | 'hatching' | 'wrong' | 'axis'

/** How a hole is drawn. */
type MarkLook = 'hole' | 'opening' | 'rim' | 'torn' | 'blocked'

/** What draws: a canvas, or what writes SVG. Positions and lengths are in the picture's pixels. */
export interface Pen {
  /** Surfaces of a tone, 0 the lightest to 4 the darkest; `goesOn` where a joint is not to be seen as a gap. */
  readonly fill: (tone: number, loops: readonly (readonly PicturePoint[])[], goesOn: boolean) => void
  /** Holes and openings in a surface; a rim is a hole with a line round it, and one torn or blocked is marked as wrong. */
  readonly mark: (look: MarkLook, loops: readonly (readonly PicturePoint[])[]) => void
  /** Lines between pairs of points, one pair after the other. */
  readonly lines: (weight: Weight, points: readonly PicturePoint[]) => void
  /** A wire: `open` says at which ends its outline stops, as the wire goes on there. */
  readonly wire: (
    from: PicturePoint,
    to: PicturePoint,
    radius: number,
    open: readonly [boolean, boolean],
  ) => void
  /** A thin spring. */
  readonly spring: (points: readonly PicturePoint[]) => void
}

/** The light: from the viewer's left shoulder. Right, up, and toward the viewer. */
const light = unit([-0.34, 0.74, 0.58])

/** The tone of a face whose normal is this, 0 to 4. */
const toneOf = ({ right, up, toward }: Camera, normal: Vector): number => {
  const lit = light[0] * dot(right, normal) + light[1] * dot(up, normal) + light[2] * dot(toward, normal)
  return lit > 0.72 ? 0 : lit > 0.48 ? 1 : lit > 0.24 ? 2 : lit > 0 ? 3 : 4
}

/** How far apart the lines of a hatching are, in pixels, on a face that looks at the viewer. */
const hatchStep = 6

/** Lines across a cut face, which turn with it: at 45 degrees in the face's own plane. */
const hatchingOf = (
  camera: Camera,
  hull: Hull,
  corners: readonly number[],
  normal: Vector,
): PicturePoint[] => {
  const level: Vector = Math.abs(normal[2]) > 0.9 ? [1, 0, 0] : unit(cross([0, 0, 1], normal))
  const across = unit(cross(normal, level))
  const slant = unit([level[0] + across[0], level[1] + across[1], level[2] + across[2]])
  const step = (hatchStep * camera.line) / camera.scale
  const loop = corners.map((corner) => hull.points[corner]!)
  const places = loop.map((point) => dot(point, slant))
  const lines: PicturePoint[] = []
  const [least, most] = [Math.min(...places), Math.max(...places)]
  for (let at = Math.ceil(least / step) * step; at < most; at += step) {
    const met: PicturePoint[] = []
    for (const [n, here] of places.entries()) {
      const there = places[(n + 1) % loop.length]!
      if (here <= at === there <= at) continue
      const share = (at - here) / (there - here)
      const [a, b] = [loop[n]!, loop[(n + 1) % loop.length]!]
      const from = minus(b, a)
      met.push(project(camera, [a[0] + from[0] * share, a[1] + from[1] * share, a[2] + from[2] * share]))
    }
    if (met.length === 2) lines.push(met[0]!, met[1]!)
  }
  return lines
}

const isWhole = ({ look, open = [] }: Mark): boolean => look === 'hole' && open.length === 0

const drawMarks = (camera: Camera, marks: readonly Mark[], pen: Pen): void => {
  const loopOf = ({ points }: Mark): PicturePoint[] => points.map((point) => project(camera, point))
  const draw = (look: MarkLook, found: readonly Mark[]): void => {
    if (found.length > 0) pen.mark(look, found.map(loopOf))
  }
  const parts = marks.filter((mark) => mark.look === 'hole' && !isWhole(mark))
  for (const kind of ['opening', 'torn', 'blocked'] as const)
    draw(
      kind,
      marks.filter(({ look }) => look === kind),
    )
  draw('rim', marks.filter(isWhole))
  draw('hole', parts)
  const lines = [...parts, ...marks.filter(({ look }) => look === 'line')].flatMap((mark) => {
    const loop = loopOf(mark)
    return loop.flatMap((from, k): PicturePoint[] => {
      const to = loop[k + 1] ?? (mark.look === 'hole' ? loop[0] : undefined)
      return to && !mark.open?.includes(k) ? [from, to] : []
    })
  })
  if (lines.length > 0) pen.lines('mark', lines)
}

/** Whether the surface goes on beyond a face's edges, so that they have no lines. */
const goesOn = (kind: FaceKind): boolean => kind === 'joint' || kind === 'flush'

const drawHull = (camera: Camera, hull: Hull, pen: Pen, isWrong: boolean): void => {
  const seen = hull.faces.map(({ normal }) => dot(normal, camera.toward) > 1e-6)
  const points = hull.points.map((point) => project(camera, point))
  const byTone: PicturePoint[][][] = []
  for (const [n, { corners, normal, kind }] of hull.faces.entries()) {
    if (!seen[n] || kind === 'joint') continue
    ;(byTone[toneOf(camera, normal)] ??= []).push(corners.map((corner) => points[corner]!))
  }
  const isJoined = hull.faces.some(({ kind }) => goesOn(kind))
  byTone.forEach((loops, tone) => {
    pen.fill(tone, loops, isJoined)
  })
  const creases: PicturePoint[] = []
  const outline: PicturePoint[] = []
  for (const { from, to, faces, isSmooth } of hull.edges) {
    const [one, other] = faces
    if (faces.some((face) => goesOn(hull.faces[face]!.kind))) continue
    if (seen[one] && seen[other]) {
      if (!isSmooth) creases.push(points[from]!, points[to]!)
    } else if (seen[one] || seen[other]) outline.push(points[from]!, points[to]!)
  }
  const hatching: PicturePoint[] = []
  for (const [n, { corners, normal, kind, marks }] of hull.faces.entries()) {
    if (!seen[n]) continue
    if (kind === 'cut' || (isWrong && kind !== 'joint'))
      hatching.push(...hatchingOf(camera, hull, corners, normal))
    if (marks.length > 0) drawMarks(camera, marks, pen)
  }
  if (hatching.length > 0) pen.lines(isWrong ? 'wrong' : 'hatching', hatching)
  if (creases.length > 0 && !isTiny(camera)) pen.lines('crease', creases)
  if (outline.length > 0) pen.lines('outline', outline)
}

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
export type Joints = Set<string>

/** Which ends of a wire have no outline of their own: they go on in a piece that is drawn already. */
const openEnds = ({ joined }: Wire, ends: readonly PicturePoint[], joints: Joints): [boolean, boolean] => {
  const [from, to] = ends.map(([x, y], n) => {
    if (!joined[n]) return false
    const key = `${Math.round(x * 5)} ${Math.round(y * 5)}`
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
