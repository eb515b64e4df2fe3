import { dimensions } from '../../mechanism/dimensions.ts'
import type { Frame } from '../../mechanism/frame.ts'
import { partId } from '../../mechanism/part.ts'
import type { HandOnPart, HandWay } from '../../words/figures/scene-step.ts'
import { carriageHalf } from '../shared/cams.ts'
import { fingerLines, handArrow } from '../shared/hand.ts'
import { drawLinework } from '../shared/linework.ts'
import type { PicturePoint } from '../shared/paths.ts'
import type { Group } from '../shared/svg.ts'
import { type Camera, project } from './engine/camera.ts'
import { dot, type Vector } from './engine/vector.ts'
import type { Box } from './draw-step.ts'
import { carriageAt, needleAt } from './machine/places.ts'
import type { Scene } from './scene.ts'
import { pointsSeen, type Sight } from './sight.ts'
import type { StepLayout } from './step-layout.ts'

/** The ways of hands, in the machine's room. */
const waysOf: Readonly<Record<HandWay, Vector>> = { down: [0, 0, -1], left: [-1, 0, 0], right: [1, 0, 0] }

/** Where a finger pushes a part, and a point some way on in the direction of its push. */
export interface HandPlace {
  readonly at: Vector
  readonly toward: Vector
  /** Whether the hand lifts what it is at. */
  readonly isLifting: boolean
}

/** A finger in a picture: where it pushes, and a point some way on. */
export interface HandInPicture {
  readonly at: PicturePoint
  readonly toward: PicturePoint
  readonly isLifting: boolean
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
  const isAside = way !== 'down'
  const [at] = points.toSorted(
    (one, other) =>
      dot(one, direction) - dot(other, direction) || (isAside ? one[1] - other[1] : 0) || other[2] - one[2],
  )
  if (!at) return null
  const [x, y, z] = direction
  return { at, toward: [at[0] + x * arrow, at[1] + y * arrow, at[2] + z * arrow], isLifting: false }
}

/** Where from front to back hands are that lift the carriage. */
const liftedAt = -18

/** Where two hands lift the carriage, one at either of its ends; none where it is not there. */
export const liftPlaces = (scene: Scene, { x }: Frame, { drawn }: Sight): HandPlace[] => {
  if (!drawn.some(({ piece }) => scene.pieces[piece]!.part === 'carriage')) return []
  const half = carriageHalf * dimensions.pitch
  const up = (carriageAt.low + carriageAt.high) / 2
  return [-1, 1].map((side) => {
    const right = needleAt(x) + side * half
    return { at: [right, liftedAt, up], toward: [right - side * arrow, liftedAt, up], isLifting: true }
  })
}

/** Half the thickness of a finger, in letters of the layout. */
const half = ({ letters }: StepLayout): number => letters * 0.75

/** How long a drawn finger is, in halves of its thickness. */
const long = 6.4

const angleOf = ({ at, toward }: HandInPicture): number => Math.atan2(toward[1] - at[1], toward[0] - at[0])

/** The room that a finger takes in a picture, and its arrow where that is below it. */
export const handBox = (layout: StepLayout, hand: HandInPicture, n: number): Box => {
  const { at: tip } = hand
  const [angle, thick] = [angleOf(hand), half(layout)]
  const [x, y] = [tip[0] - long * thick * Math.cos(angle), tip[1] - long * thick * Math.sin(angle)]
  // The arrow of a hand that lifts is above its finger.
  const above = hand.isLifting ? 6 * thick : 0
  const below = n > 0 && !hand.isLifting ? 2 * thick : 0
  const [left, top] = [Math.min(x, tip[0]) - thick, Math.min(y, tip[1]) - thick - above]
  return {
    left,
    top,
    width: Math.abs(x - tip[0]) + 2 * thick,
    height: Math.abs(y - tip[1]) + 2 * thick + above + below,
  }
}

/** Draws fingers that push parts of the machine, each with an arrow beside it: which way. */
export const drawHands = (parent: Group, layout: StepLayout, hands: readonly HandInPicture[]): void => {
  const thick = half(layout)
  const lines = hands.flatMap((hand, n) => {
    const angle = angleOf(hand)
    const [ux, uy] = [Math.cos(angle), Math.sin(angle)]
    // The first one's arrow is above or to the right of the finger, clear of its edge, and others' are on its other side.
    const side = (ux > 0.3 || (Math.abs(ux) <= 0.3 && uy < 0)) === (n === 0) ? 1 : -1
    const [x, y] = [hand.at[0] + side * uy * 2.1 * thick, hand.at[1] - side * ux * 2.1 * thick]
    const from = -3.4 * thick
    if (hand.isLifting) {
      const [middle, low] = [hand.at[0] - 3 * thick * ux, hand.at[1] - 3 * thick * uy - 2 * thick]
      return [
        ...fingerLines({ tip: hand.at, points: (angle * 180) / Math.PI, half: thick }),
        handArrow([middle, low], [middle, low - 3.6 * thick], thick * 0.7),
      ]
    }
    return [
      ...fingerLines({ tip: hand.at, points: (angle * 180) / Math.PI, half: thick }),
      handArrow([x + from * ux, y + from * uy], [x + thick * ux, y + thick * uy], thick * 0.7),
    ]
  })
  drawLinework(parent, 'scene-hands by-hand', '', lines)
}
