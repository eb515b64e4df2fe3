import type { Camera } from './engine/camera.ts'
import type { Drawn } from './engine/leaf.ts'
import { type Posed, posedIn, walk } from './engine/order.ts'
import { moved } from './engine/piece.ts'
import { type Tree, treeOf } from './engine/tree.ts'
import type { Vector } from './engine/vector.ts'
import { apartLines } from './machine/apart.ts'
import { type ModelName, models } from './machine/models.ts'
import type { MachinePiece } from './machine/part.ts'
import { extremePose, type Pose } from './machine/pose.ts'
import { isShownIn, type PictureFormat, type SceneView } from './views.ts'

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
  /** Points between which all of it is, or what is to fill the picture, three numbers each. */
  readonly points: Float64Array
}

/** Adds the corners of all that is in a tree, or of the room that a wire takes. */
const addCorners = (posed: Posed, points: number[]): void => {
  if (posed.kind === 'plane') {
    addCorners(posed.before, points)
    addCorners(posed.beyond, points)
    return
  }
  for (const { shape, extent } of posed.drawn)
    if (shape.kind === 'hull') for (const point of shape.points) points.push(...point)
    else points.push(...extent.least, ...extent.most)
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
  const posed = posedIn(tree, shown, view.sections)
  const lines = view.model === 'apart' ? apartLines(pose) : []
  const points: number[] = view.filledBy ? [...view.filledBy.least, ...view.filledBy.most] : []
  if (!view.filledBy) addCorners(posed, points)
  return { pieces, posed, format: view.format, lines, points: Float64Array.from(points) }
}

/** The pieces of a scene in the order in which they are drawn. */
export const drawnOf = ({ posed }: Scene, camera: Camera): Drawn[] => {
  const drawn: Drawn[] = []
  walk(posed, camera, (piece) => drawn.push(piece))
  return drawn
}
