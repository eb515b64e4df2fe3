import type { PicturePoint } from '../shared/paths.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'
import { type Camera, project } from './engine/camera.ts'
import { seenAt } from './engine/cover.ts'
import type { Wanted } from './engine/labels.ts'
import type { Drawn } from './engine/leaf.ts'
import type { Shape } from './engine/piece.ts'
import { between, dot, type Vector } from './engine/vector.ts'
import type { MachinePiece } from './machine/part.ts'
import { drawnOf, type Scene } from './scene.ts'

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
