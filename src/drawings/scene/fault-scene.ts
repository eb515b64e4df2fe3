import type { Fault } from '../../mechanism/fault.ts'
import { type NumberedPart, numberedNames, numberedParts } from '../../words/numbered-parts.ts'
import type { PicturePoint } from '../shared/paths.ts'
import { type Camera, cameraAt, project } from './engine/camera.ts'
import { type FaultView, faultViewOf, middleOf } from './fault-views.ts'
import { faultRoom } from './layout.ts'
import type { MachinePiece } from './machine/part.ts'
import type { Pose } from './machine/pose.ts'
import { placesOf, type SeenPart } from './sight.ts'
import { type Scene, sceneOf, type Trees } from './scene.ts'

/** What is taken as the picture of a fault: the machine close to what is broken, and where its parts are seen. */
export interface FaultScene {
  readonly view: FaultView
  readonly scene: Scene
  readonly camera: Camera
  /** The part that is broken, by its number. */
  readonly broken: NumberedPart
  /** What is named: first what is broken, then what it is beside. */
  readonly places: readonly SeenPart[]
}

/** How far from the picture's edge what a label names is at least, in pixels. */
const inside = 12

/** Most labels of one picture. */
const mostLabels = 4

/**
 * The picture of a fault in a pose that has it; null where no part that is drawn is broken. Throws where the picture does
 * not show what is broken.
 */
export const faultSceneOf = (trees: Trees, pose: Pose, fault: Fault): FaultScene | null => {
  const { kind } = fault
  const view = faultViewOf(kind)
  if (!view) return null
  const scene = sceneOf(trees[view.model], pose, view)
  const middle = middleOf(view.place, pose, fault)
  const camera = cameraAt(view.view, middle, view.across, faultRoom)
  const isPoint = ([x, y]: PicturePoint): boolean =>
    x > inside && x < faultRoom.width - inside && y > inside && y < faultRoom.height - inside
  const isBroken = ({ mood }: MachinePiece): boolean => mood === 'broken'
  const seen = (named: readonly NumberedPart[], isPiece: (piece: MachinePiece) => boolean): SeenPart[] =>
    placesOf(scene, camera, named, { isPiece, isPoint }).filter(({ points }) => points.length > 0)
  const own = numberedNames.filter((name) => numberedParts[name].faults.some((each) => each === kind))
  const [first] =
    view.place === 'hole'
      ? [{ name: 'card' as const, points: [project(camera, middle)], at: [middle] }]
      : [...seen(own, isBroken), ...seen(own, () => true)]
  if (!first) throw new Error(`the picture of ${kind} does not show what is broken`)
  const others = view.named.filter((name) => name !== first.name)
  return {
    view,
    scene,
    camera,
    broken: first.name,
    places: [first, ...seen(others, () => true)].slice(0, mostLabels),
  }
}
