import { partId } from '../../mechanism/part.ts'
import type { HandOnPart, HandWay } from '../../words/figures/scene-step.ts'
import { fingerLines, handArrow } from '../shared/hand.ts'
import { drawLinework } from '../shared/linework.ts'
import type { PicturePoint } from '../shared/paths.ts'
import type { Group } from '../shared/svg.ts'
import { type Camera, project } from './engine/camera.ts'
import { dot, type Vector } from './engine/vector.ts'
import type { Box } from './draw-step.ts'
import type { Scene } from './scene.ts'
import { pointsSeen, type Sight } from './sight.ts'
import type { StepLayout } from './step-layout.ts'

/** The ways of hands, in the machine's room. */
const waysOf: Readonly<Record<HandWay, Vector>> = { down: [0, 0, -1], left: [-1, 0, 0], right: [1, 0, 0] }

/** Where a finger pushes a part, and a point some way on in the direction of its push. */
export interface HandPlace {
  readonly at: Vector
  readonly toward: Vector
}

/** A finger in a picture: where it pushes, and a point some way on. */
export interface HandInPicture {
  readonly at: PicturePoint
  readonly toward: PicturePoint
}

/** How long an arrow is, in mm of the machine. */
const arrow = 9

/** Where a hand pushes a part: where one sees that part, as far back as there is something to push on. */
export const handPlace = (
  scene: Scene,
  camera: Camera,
  { part, way }: HandOnPart,
  { drawn, seen }: Sight,
): HandPlace | null => {
  const id = partId(part)
  const direction = waysOf[way]
  const isOwn = (piece: number): boolean => scene.pieces[piece]!.part === id
  const points = pointsSeen(
    camera,
    drawn.filter(({ piece }) => isOwn(piece)),
    (point) => {
      const piece = seen(project(camera, point))
      return piece !== null && isOwn(piece)
    },
  )
  const [at] = points.toSorted(
    (one, other) => dot(one, direction) - dot(other, direction) || other[2] - one[2],
  )
  if (!at) return null
  const [x, y, z] = direction
  return { at, toward: [at[0] + x * arrow, at[1] + y * arrow, at[2] + z * arrow] }
}

/** Half the thickness of a finger, in letters of the layout. */
const half = ({ letters }: StepLayout): number => letters * 0.75

/** How long a drawn finger is, in halves of its thickness. */
const long = 6.4

const angleOf = ({ at, toward }: HandInPicture): number => Math.atan2(toward[1] - at[1], toward[0] - at[0])

/** The room that a finger takes in a picture. */
export const handBox = (layout: StepLayout, hand: HandInPicture): Box => {
  const { at: tip } = hand
  const [angle, thick] = [angleOf(hand), half(layout)]
  const [x, y] = [tip[0] - long * thick * Math.cos(angle), tip[1] - long * thick * Math.sin(angle)]
  const [left, top] = [Math.min(x, tip[0]) - thick, Math.min(y, tip[1]) - thick]
  return {
    left,
    top,
    width: Math.abs(x - tip[0]) + 2 * thick,
    height: Math.abs(y - tip[1]) + 2 * thick,
  }
}

/** Draws fingers that push parts of the machine, each with an arrow beside it: which way. */
export const drawHands = (parent: Group, layout: StepLayout, hands: readonly HandInPicture[]): void => {
  const thick = half(layout)
  const lines = hands.flatMap((hand) => {
    const angle = angleOf(hand)
    const [ux, uy] = [Math.cos(angle), Math.sin(angle)]
    // The arrow is above or to the right of the finger, clear of its edge.
    const side = ux > 0.3 || (Math.abs(ux) <= 0.3 && uy < 0) ? 1 : -1
    const [x, y] = [hand.at[0] + side * uy * 2.1 * thick, hand.at[1] - side * ux * 2.1 * thick]
    const from = -3.4 * thick
    return [
      ...fingerLines({ tip: hand.at, points: (angle * 180) / Math.PI, half: thick }),
      handArrow([x + from * ux, y + from * uy], [x + thick * ux, y + thick * uy], thick * 0.7),
    ]
  })
  drawLinework(parent, 'scene-hands by-hand', '', lines)
}
