import type { PicturePoint } from '../shared/paths.ts'
import { drawList, type Group } from '../shared/svg.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'
import { batched } from './engine/batch.ts'
import {
  type Camera,
  cameraBetween,
  cameraOf,
  enlarged,
  project,
  type Room,
  type Standing,
  standingOf,
  type View,
} from './engine/camera.ts'
import { seenAt } from './engine/cover.ts'
import { extentOf } from './engine/extent.ts'
import { drawInk, type Joints, type Pen } from './engine/ink.ts'
import type { Wanted } from './engine/labels.ts'
import { type Drawn, type Posed, posedIn, walk } from './engine/order.ts'
import { moved, type Shape } from './engine/piece.ts'
import { type SvgLook, svgPen, type SvgPath } from './engine/svg-pen.ts'
import { type Tree, treeOf } from './engine/tree.ts'
import { between, dot, type Vector } from './engine/vector.ts'
import { type PictureSize, visibleIn } from './engine/visible.ts'
import { apartLines } from './machine/apart.ts'
import { type ModelName, models } from './machine/models.ts'
import type { MachinePiece } from './machine/part.ts'
import { extremePose, type Pose } from './machine/pose.ts'
import { isShownIn, type PictureFormat, type SceneView } from './views.ts'

/** The room of the machine in pictures of either format, in pixels of its own. */
export const machineRooms: Readonly<Record<PictureFormat, PictureSize>> = {
  tall: { width: 720, height: 600 },
  flat: { width: 960, height: 340 },
}

/** The room of the machine in the pictures of steps. */
export const machineRoom = machineRooms.tall

/** How far from the edges of its room the machine is at rest, in pixels: to the sides, and above and below. */
const edges: Readonly<Record<PictureFormat, readonly [number, number]>> = { tall: [34, 10], flat: [12, 8] }

const roomIn = (format: PictureFormat): Room => {
  const { width, height } = machineRooms[format]
  const [left, top] = edges[format]
  return { left, top, width: width - 2 * left, height: height - 2 * top }
}

const corners = 8

/** The tree of the machine's pieces, which stays as it is while they move. To find it takes half a second. */
export const treeOfMachine = (pose: Pose, model: ModelName = 'stretch'): Tree =>
  treeOf(
    Array.from({ length: corners }, (_, corner) =>
      models[model](extremePose(pose, corner)).map(({ shape }) => shape),
    ),
  )

/** The trees of all models. */
export type Trees = Readonly<Record<ModelName, Tree>>

/** What a view shows of the machine in one pose, ready to be seen from anywhere. */
export interface Scene {
  readonly pieces: readonly MachinePiece[]
  readonly posed: Posed
  readonly format: PictureFormat
  /** Thin lines that join what is taken apart. */
  readonly lines: readonly (readonly [Vector, Vector])[]
  /** Points between which all of it is. */
  readonly points: readonly Vector[]
}

/** All pieces in a tree, from the first. */
const piecesIn = (posed: Posed): Shape[] =>
  posed.kind === 'leaf'
    ? posed.drawn.map(({ shape }) => shape)
    : [...piecesIn(posed.before), ...piecesIn(posed.beyond)]

/** The corners of a solid, or of the room that a wire takes. */
const cornersOf = (shape: Shape): readonly Vector[] => {
  if (shape.kind === 'hull') return shape.points
  const { least, most } = extentOf(shape)
  return [least, most]
}

/** What a view shows of the machine in a pose; the tree is that of the view's model. */
export const sceneOf = (tree: Tree, pose: Pose, view: SceneView): Scene => {
  const pieces = models[view.model](pose)
  const shown = pieces.map((piece) => {
    if (!piece.shape || !isShownIn(view, piece)) return null
    return view.drawnOut > 0 && piece.layer === 'retainer'
      ? moved(piece.shape, [view.drawnOut, 0, 0])
      : piece.shape
  })
  const posed = posedIn(tree, shown, view.section)
  const lines = view.model === 'apart' ? apartLines(pose) : []
  return { pieces, posed, format: view.format, lines, points: piecesIn(posed).flatMap(cornersOf) }
}

/** The camera for a scene. */
export const cameraFor = ({ points, format }: Scene, view: View): Camera =>
  cameraOf(view, points, roomIn(format))

/** Where one stands to see a scene with a camera. */
export const standingFor = ({ points, format }: Scene, view: View, camera: Camera): Standing =>
  standingOf(view, camera, points, roomIn(format))

/** The view and the camera a share, 0 to 1, of the way between two places to stand. */
export const onTheWay = (
  from: Standing,
  to: Standing,
  share: number,
): { readonly view: View; readonly camera: Camera } => cameraBetween(from, to, share, roomIn('tall'))

/** What a picture brings out of the machine. */
export interface Marked {
  /** The part that is lit. */
  readonly lit: NumberedPart | null
  /** Which pieces have full ink, where the others have a third of it; all where it is null. */
  readonly path: ((piece: MachinePiece) => boolean) | null
}

/** Nothing brought out. */
export const unmarked: Marked = { lit: null, path: null }

/** The classes of a piece in the styles: whether its ink is faint, and what it is made of, or how it is marked. */
const lookOf = (piece: MachinePiece, { lit, path }: Marked): string => {
  if (piece.name === lit) return 'lit'
  const look = piece.mood === 'plain' ? piece.material : piece.mood
  return path === null || piece.mood === 'broken' || path(piece) ? look : `faint ${look}`
}

/** Draws pieces of a scene with a pen; `onLook` is called before each with its classes. */
const inkOf = (
  { pieces }: Scene,
  camera: Camera,
  pen: Pen,
  marked: Marked,
  onLook: (look: string) => void,
): ((drawn: Drawn) => void) => {
  const joints: Joints = new Set()
  return ({ piece, shape }) => {
    const found = pieces[piece]!
    onLook(lookOf(found, marked))
    drawInk(camera, shape, pen, joints, found.mood === 'broken' && found.name !== marked.lit)
  }
}

/** Draws the lines that join what is taken apart, over all of it. */
const inkLines = ({ lines }: Scene, camera: Camera, pen: Pen): void => {
  if (lines.length > 0)
    pen.lines(
      'axis',
      lines.flatMap((ends) => ends.map((end) => project(camera, end))),
    )
}

/** Draws a scene with a pen, from the back to the front; `onLook` is called before each piece with its classes. */
export const inkScene = (
  scene: Scene,
  camera: Camera,
  pen: Pen,
  marked: Marked,
  onLook: (look: string) => void,
): void => {
  walk(scene.posed, camera, inkOf(scene, camera, pen, marked, onLook))
  inkLines(scene, camera, pen)
}

/** The paths of some pieces of a scene, each piece's look before the tone; in a still what is faint has few words. */
const pathsOf = (
  scene: Scene,
  camera: Camera,
  marked: Marked,
  drawn: readonly Drawn[],
  look: SvgLook,
  isStill = false,
): SvgPath[] => {
  const paths: SvgPath[] = []
  let piece = ''
  const isFaint = (): boolean => piece.startsWith('faint ')
  const pen = svgPen(isStill ? { ...look, isFaint } : look, (path) => {
    const isToned = /^(?:t\d|s-wire|w-line)$/.test(path.look)
    const before = isToned ? `${piece} ` : isFaint() ? 'faint ' : ''
    paths.push({ ...path, look: before + path.look })
  })
  const ink = inkOf(scene, camera, pen, marked, (now) => {
    piece = now
  })
  for (const each of drawn) ink(each)
  inkLines(scene, camera, pen)
  return paths
}

/** Draws a scene as paths of a group. */
export const drawScene = (group: Group, scene: Scene, camera: Camera, marked: Marked): void => {
  group.style('--line-wide', camera.line)
  drawList(
    group,
    'path',
    pathsOf(scene, camera, marked, drawnOf(scene, camera), { line: camera.line, grain: 0.1 }),
    ({ look, d }) => ({
      class: look,
      d,
    }),
  )
}

/** How many times as large stills are written, so that their corners are whole numbers, half a pixel fine. */
export const stillTimes = 2

/**
 * Draws what one sees of a scene in a picture of this size, and nothing that is hidden or outside it: `stillTimes` as
 * large, as stills are written.
 */
export const drawSeen = (
  group: Group,
  scene: Scene,
  camera: Camera,
  size: PictureSize,
  marked: Marked = unmarked,
  grain = 1,
): void => {
  const drawn = drawnOf(scene, camera)
  const visible = visibleIn(camera, drawn, size)
  const shown = drawn.filter((each) => visible.has(each))
  const large = enlarged(camera, stillTimes)
  group.style('--line-wide', large.line)
  const look = {
    line: large.line,
    grain,
    size: { width: size.width * stillTimes, height: size.height * stillTimes },
  }
  drawList(group, 'path', batched(pathsOf(scene, large, marked, shown, look, true)), ({ look, d, wide }) => ({
    class: look,
    d,
    ...(wide === undefined ? {} : { 'stroke-width': wide }),
  }))
}

/** The pieces of a scene in the order in which they are drawn. */
export const drawnOf = ({ posed }: Scene, camera: Camera): Drawn[] => {
  const drawn: Drawn[] = []
  walk(posed, camera, (piece) => drawn.push(piece))
  return drawn
}

/** What is drawn of a scene from a camera, and which piece one sees at a point of the machine's room. */
export interface Sight {
  readonly drawn: readonly Drawn[]
  readonly seen: (point: PicturePoint) => number | null
}

/** What one sees of a scene from a camera. */
export const sightOf = (scene: Scene, camera: Camera): Sight => {
  const drawn = drawnOf(scene, camera)
  return { drawn, seen: seenAt(camera, drawn) }
}

/** Which part one sees at a point of the machine's room. */
export const partSeenAt = (scene: Scene, camera: Camera): ((x: number, y: number) => NumberedPart | null) => {
  const { seen } = sightOf(scene, camera)
  return (x, y) => {
    const piece = seen([x, y])
    return piece === null ? null : scene.pieces[piece]!.name
  }
}

/** Points of a shape at which it may be seen: the middles of its faces, or towards their corners. */
const pointsOf = (shape: Shape, camera: Camera, where: 'middles' | 'corners'): Vector[] => {
  if (shape.kind !== 'hull')
    return (where === 'middles' ? [0.5] : [0.1, 0.3, 0.7, 0.9]).map((share) =>
      between(shape.ends[0], shape.ends[1], share),
    )
  return shape.faces
    .filter(({ normal, kind }) => kind !== 'joint' && dot(normal, camera.toward) > 0.05)
    .flatMap(({ corners: loop }) => {
      const points = loop.map((corner) => shape.points[corner]!)
      const along = (axis: 0 | 1 | 2): number =>
        points.reduce((sum, point) => sum + point[axis], 0) / points.length
      const middle: Vector = [along(0), along(1), along(2)]
      return where === 'middles' ? [middle] : points.map((point) => between(point, middle, 0.25))
    })
}

/** How many pieces of one kind are tried for a label. */
const tried = 90

/** Which points of these pieces one sees, of at most so many of them: the middles of faces, else points at their corners. */
export const pointsSeen = (
  camera: Camera,
  own: readonly Drawn[],
  isSeen: (point: Vector) => boolean,
): readonly Vector[] => {
  const step = Math.max(1, own.length / tried)
  const chosen = Array.from({ length: Math.min(tried, own.length) }, (_, n) => own[Math.floor(n * step)]!)
  const seenPoints = (where: 'middles' | 'corners'): Vector[] =>
    chosen.flatMap(({ shape }) => pointsOf(shape, camera, where)).filter(isSeen)
  const middles = seenPoints('middles')
  return middles.length > 0 ? middles : seenPoints('corners')
}

/** Where a part is seen: in pixels of the machine's room, and which points of the machine these are. */
export interface SeenPart extends Wanted<NumberedPart> {
  readonly at: readonly Vector[]
}

/** Which pieces of a part its label may point at, and at which points of the picture. */
export interface Meant {
  readonly isPiece: (piece: MachinePiece) => boolean
  readonly isPoint: (point: PicturePoint) => boolean
}

export const anywhere: Meant = { isPiece: () => true, isPoint: () => true }

/** Where each of these parts is seen in a scene. */
export const placesOf = (
  scene: Scene,
  camera: Camera,
  named: readonly NumberedPart[],
  { isPiece, isPoint }: Meant = anywhere,
  { drawn, seen } = sightOf(scene, camera),
): SeenPart[] =>
  named.map((name) => {
    const isOwn = (piece: number): boolean => {
      const found = scene.pieces[piece]!
      return found.name === name && isPiece(found)
    }
    const isSeen = (point: Vector): boolean => {
      const place = project(camera, point)
      if (!isPoint(place)) return false
      const piece = seen(place)
      return piece !== null && isOwn(piece)
    }
    const at = pointsSeen(
      camera,
      drawn.filter(({ piece }) => isOwn(piece)),
      isSeen,
    )
    return { name, at, points: at.map((point) => project(camera, point)) }
  })
