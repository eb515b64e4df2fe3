import type { Frame } from '../../mechanism/frame.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { carriageHalf } from '../shared/cams.ts'
import { handArrow } from '../shared/hand.ts'
import { type PicturePoint, px } from '../shared/paths.ts'
import { drawGroup, drawShapes, type Group } from '../shared/svg.ts'
import { type Camera, project } from './engine/camera.ts'
import type { Vector } from './engine/vector.ts'
import { inLayout } from './draw-labels.ts'
import type { Box } from './draw-step.ts'
import { carriageAt, needleAt } from './machine/places.ts'
import { boxOf, crossings, type Line } from './place-measures.ts'
import type { Scene } from './scene.ts'
import type { Sight } from './sight.ts'
import type { StepPicture } from './step-picture.ts'
import type { StepLayout } from './step-layout.ts'
import type { SceneView } from './views.ts'

/** The carriage's way in a picture: a point of the carriage that one sees, and in which direction that goes, 1 to the right. */
export interface WayPlace {
  readonly at: Vector
  readonly way: 1 | -1
}

/** The way as it lies in a picture: where its arrow is, which way that points, and its words. */
interface WayInPicture {
  readonly at: PicturePoint
  /** A unit to the right and down, or null where the carriage comes toward one or goes away. */
  readonly points: PicturePoint | null
  readonly isToward: boolean
  readonly words: string
}

/** The places of an arrow on the carriage's plate, by how far they are from its middle toward its end ahead. */
const shares = [0.5, 0.25, 0, -0.25, -0.5, 0.8, -0.8] as const

/** From where on, as a share, one looks along the bed at the carriage's end. */
const fromEnd = 0.8

/** The faces of the plate on which an arrow may be: from front to back, and up. */
const facesOf = (
  { toward: [right, back, up] }: Camera,
  cutAt: number | null,
): (readonly [number, number])[] => {
  const { front, back: rear, low, high } = carriageAt
  const middle = (low + high) / 2
  return [
    ...(up > 0.25
      ? ([
          [-34, high],
          [4, high],
        ] as const)
      : []),
    ...(up < -0.25
      ? ([
          [front, middle],
          [-34, low],
        ] as const)
      : []),
    ...(back > 0.25 ? ([[cutAt ?? rear, middle]] as const) : []),
    ...(back < -0.25 ? ([[front, middle]] as const) : []),
    ...(Math.abs(right) > fromEnd ? ([[-27, middle]] as const) : []),
  ]
}

/** From where to where along the bed a view shows something of the carriage. */
const spanOf = ({ sections }: SceneView, x: number): readonly [number, number] => {
  const half = carriageHalf * dimensions.pitch
  const along = sections.filter(({ axis }) => axis === 0)
  const lefts = along.flatMap(({ at, shows }) => (shows === 'beyond' ? [at] : []))
  const rights = along.flatMap(({ at, shows }) => (shows === 'before' ? [at] : []))
  return [Math.max(x - half, ...lefts), Math.min(x + half, ...rights)]
}

/** Where an arrow may be on the faces of the carriage's plate that one sees, the best place first. */
const wayPlaces = (
  scene: Scene,
  camera: Camera,
  shown: SceneView,
  { x, pass: { way } }: Frame,
  { seen }: Sight,
): WayPlace[] => {
  const [left, right] = spanOf(shown, needleAt(x))
  const cutAt = shown.sections.find(({ axis, shows }) => axis === 1 && shows === 'before')?.at ?? null
  const isFromEnd = Math.abs(camera.toward[0]) > fromEnd
  // Seen from its end, what is nearest is the end or the cut.
  const along = isFromEnd
    ? [camera.toward[0] > 0 ? right : left]
    : shares.map((share) => (left + right) / 2 + (way * share * (right - left)) / 2)
  return facesOf(camera, cutAt)
    .flatMap(([back, up]) => along.map((at): Vector => [at, back, up]))
    .filter((at) => {
      const piece = seen(project(camera, at))
      return piece !== null && scene.pieces[piece]!.name === 'carriage'
    })
    .map((at) => ({ at, way }))
}

/**
 * Where an arrow on the carriage says which way it goes: where one sees that, if it can be where no line to a label goes
 * through it; null where the carriage is not there or not seen.
 */
export const wayPlace = (
  layout: StepLayout,
  { scene, camera, shown, frame }: Pick<StepPicture, 'scene' | 'camera' | 'shown' | 'frame'>,
  sight: Sight,
  leaders: readonly Line[],
): WayPlace | null => {
  if (!shown.layers.includes('carriage')) return null
  const places = wayPlaces(scene, camera, shown, frame, sight)
  const crossed = (place: WayPlace): number =>
    wayBoxes(layout, camera, place).reduce((sum, box) => sum + crossings(box, leaders), 0)
  return places.toSorted((one, other) => crossed(one) - crossed(other))[0] ?? null
}

/** How long the arrow is, and how wide, in letters. */
const [long, wide] = [3, 0.55]

/** Less than this, as a share of its length, an arrow along the bed is seen end on. */
const endOn = 0.3

const inPicture = (layout: StepLayout, camera: Camera, { at, way }: WayPlace): WayInPicture => {
  const [x, y] = [camera.right[0] * way, -camera.up[0] * way]
  const length = Math.hypot(x, y)
  return {
    at: inLayout(layout, project(camera, at)),
    points: length < endOn ? null : [x / length, y / length],
    isToward: camera.toward[0] * way > 0,
    words: way === 1 ? 'to the right' : 'to the left',
  }
}

/** Where the words are: at the arrow's tail. */
const wordsPlace = (
  { letters }: StepLayout,
  { at: [x, y], points }: WayInPicture,
): { readonly at: PicturePoint; readonly anchor: 'start' | 'end' } => {
  const [right, down] = points ?? [-1, 0]
  const from = (points ? long / 2 : wide * 1.4) + 0.45
  return {
    at: [x - right * from * letters, y - down * from * letters + letters * 0.35],
    anchor: right > 0 ? 'end' : 'start',
  }
}

/** The room that the arrow takes in a picture, with its words. */
export const wayBoxes = (layout: StepLayout, camera: Camera, place: WayPlace): Box[] => {
  const way = inPicture(layout, camera, place)
  const [x, y] = way.at
  const [right, down] = way.points ?? [0, 0]
  const { letters } = layout
  const [across, high] = [(Math.abs(right) * long) / 2 + wide, (Math.abs(down) * long) / 2 + wide].map(
    (half) => half * letters,
  ) as [number, number]
  const words = wordsPlace(layout, way)
  return [
    { left: x - across, top: y - high, width: 2 * across, height: 2 * high },
    boxOf(way.words, words.at, words.anchor, letters),
  ]
}

/** The arrow seen along the bed, as a path. */
const arrowPath = ({ letters }: StepLayout, { at: [x, y], points }: WayInPicture): string => {
  const [right, down] = points ?? [0, 0]
  const half = (long / 2) * letters
  return handArrow([x - right * half, y - down * half], [x + right * half, y + down * half], letters * wide).d
}

/** The feathers of an arrow that goes away, as a path: a cross in its ring. */
const feathers = ({ at: [x, y] }: WayInPicture, radius: number): string => {
  const half = radius * Math.SQRT1_2
  const line = (side: 1 | -1): string =>
    `M${px(x - half)},${px(y - side * half)}L${px(x + half)},${px(y + side * half)}`
  return line(1) + line(-1)
}

/** Draws the arrow on the carriage, where there is one: end on it is a ring with the arrow's point, or its feathers. */
export const drawWay = (parent: Group, layout: StepLayout, camera: Camera, place: WayPlace | null): void => {
  const band = drawGroup(parent, 'scene-way')
  const ways = place ? [inPicture(layout, camera, place)] : []
  const endOnes = ways.filter(({ points }) => points === null)
  const radius = layout.letters * wide
  const round = (r: number) => (way: WayInPicture) => ({ cx: px(way.at[0]), cy: px(way.at[1]), r: px(r) })
  drawShapes(
    band,
    'path',
    'scene-way-arrow',
    ways.filter(({ points }) => points),
    (way) => ({
      d: arrowPath(layout, way),
    }),
  )
  drawShapes(band, 'circle', 'scene-way-ring', endOnes, round(radius))
  drawShapes(
    band,
    'circle',
    'scene-way-point',
    endOnes.filter(({ isToward }) => isToward),
    round(radius * 0.32),
  )
  drawShapes(
    band,
    'path',
    'scene-way-feathers',
    endOnes.filter(({ isToward }) => !isToward),
    (way) => ({ d: feathers(way, radius) }),
  )
  drawShapes(band, 'text', 'scene-measure', ways, (way) => {
    const { at, anchor } = wordsPlace(layout, way)
    return { x: px(at[0]), y: px(at[1]), 'text-anchor': anchor, text: way.words }
  })
}
