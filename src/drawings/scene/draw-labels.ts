import { type NumberedPart, numberedParts } from '../../words/numbered-parts.ts'
import { type PicturePoint, px } from '../shared/paths.ts'
import { drawGroup, drawList, drawShape, drawShapes, type Group, into } from '../shared/svg.ts'
import { type Camera, project } from './engine/camera.ts'
import { type Placed, placeLabels } from './engine/labels.ts'
import type { Vector } from './engine/vector.ts'
import type { SceneLayout } from './layout.ts'
import { machineRooms } from './cameras.ts'
import type { SeenPart } from './sight.ts'

/** A label of a picture, and the point of the machine that it names. */
export interface SceneLabel extends Placed<NumberedPart> {
  readonly at: Vector
}

/** A point of the machine's room in a picture's layout. */
export const inLayout = (
  { machine: { x, y, scale } }: SceneLayout,
  [right, down]: PicturePoint,
): PicturePoint => [x + right * scale, y + down * scale]

/** How many points of a part in a flat picture its label may point at. */
const fewPoints = 4

/** Of many points those few that are nearest to a share of the way across the machine's room. */
const nearestAcross = (points: readonly PicturePoint[], share: number): PicturePoint[] => {
  const x = machineRooms.flat.width * share
  return points.toSorted(([one], [other]) => Math.abs(one - x) - Math.abs(other - x)).slice(0, fewPoints)
}

/** The labels of a picture: of the parts that are seen, each at the margin at which it was `before`. */
export const labelsIn = (
  layout: SceneLayout,
  seen: readonly SeenPart[],
  before: readonly SceneLabel[] = [],
): SceneLabel[] => {
  const isFlat = layout.format === 'flat'
  // Above and below a flat picture is as to the left and right of one that lies on its side.
  const onSide = ([x, y]: PicturePoint): PicturePoint => (isFlat ? [y, x] : [x, y])
  const { left, right, top, bottom, step } = layout.margins
  const margins = isFlat ? { left: top, right: bottom, top: left, bottom: right, step } : layout.margins
  // Labels of a flat picture are spread over its length, in the order in which its parts are named.
  const chosen = seen.map(({ points }, n) =>
    isFlat ? nearestAcross(points, (n + 0.5) / seen.length) : points,
  )
  const wanted = seen.map(({ name }, n) => ({
    name,
    points: chosen[n]!.map((point) => onSide(inLayout(layout, point))),
    side: before.find((label) => label.name === name)?.side,
  }))
  return placeLabels(wanted, margins).map((label) => {
    const n = wanted.findIndex(({ name }) => name === label.name)
    const [x, y] = onSide([label.x, label.y])
    return {
      ...label,
      x,
      y,
      to: onSide(label.to),
      at: seen[n]!.at[seen[n]!.points.indexOf(chosen[n]![wanted[n]!.points.indexOf(label.to)]!)]!,
    }
  })
}

/** The same labels while the machine turns: their lines follow what they name. */
export const followed = (layout: SceneLayout, camera: Camera, labels: readonly SceneLabel[]): SceneLabel[] =>
  labels.map((label) => ({ ...label, to: inLayout(layout, project(camera, label.at)) }))

/** The line from a label's ring to its part. */
const leader = ({ x, y, to: [right, down] }: Placed<NumberedPart>, ring: number): string => {
  const length = Math.hypot(right - x, down - y)
  const share = length <= ring ? 1 : ring / length
  return `M${px(x + (right - x) * share)},${px(y + (down - y) * share)}L${px(right)},${px(down)}`
}

/** Where a name is beside its ring. */
const namePlace = (
  { format, ring }: SceneLayout,
  side: 'left' | 'right',
): { readonly x: number; readonly y: number; readonly 'text-anchor': string } => {
  if (format === 'flat') return { x: 0, y: side === 'left' ? -ring - 8 : ring + 20, 'text-anchor': 'middle' }
  return side === 'left'
    ? { x: -ring - 6, y: 5, 'text-anchor': 'end' }
    : { x: ring + 6, y: 5, 'text-anchor': 'start' }
}

/** A part that is broken, by the name that it has in the picture of its fault. */
export interface BrokenLabel {
  readonly name: NumberedPart
  readonly words: string
}

/**
 * Draws labels: a number in a ring and, where there is room, the part's name, with a line to the part. One of them may be
 * lit, and one that of what is broken.
 */
export const drawSceneLabels = (
  parent: Group,
  layout: SceneLayout,
  labels: readonly Placed<NumberedPart>[],
  lit: NumberedPart | null,
  broken: BrokenLabel | null = null,
): void => {
  const band = drawGroup(parent, 'scene-labels')
  const lines = labels.map((label) => leader(label, layout.ring))
  drawShape(band, 'path', 'scene-leader-ground', { d: lines.join('') })
  drawShape(band, 'path', 'scene-leader', { d: lines.join('') })
  drawShapes(band, 'circle', 'scene-end', labels, ({ to }) => ({ cx: px(to[0]), cy: px(to[1]), r: 2 }))
  const groups = drawShapes(band, 'g', 'scene-label', labels, ({ name, side, x, y }) => ({
    'data-name': name,
    'data-side': side,
    'data-lit': name === lit ? 'lit' : name === broken?.name ? 'broken' : '',
    transform: `translate(${px(x)} ${px(y)})`,
  }))
  groups.each(function ({ name, side }) {
    const { number, name: usual } = numberedParts[name]
    const words = name === broken?.name ? broken.words : usual
    drawList(into(this), 'circle', [layout.ring], (r) => ({ r }))
    drawShapes(into(this), 'text', 'scene-number', [number], (text) => ({ y: layout.ring * 0.4, text }))
    drawShapes(into(this), 'text', 'scene-name', layout.shape === 'wide' ? [words] : [], (text) => ({
      ...namePlace(layout, side),
      text,
    }))
  })
}
