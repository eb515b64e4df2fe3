import { allColumns, type Column, measureOfColumn } from '../../../mechanism/indices.ts'
import { partId } from '../../../mechanism/part.ts'
import { forwardOf } from '../../shared/wedge.ts'
import { bentWire, box, coil, prism, wire } from '../engine/piece.ts'
import type { Vector } from '../engine/vector.ts'
import { createMemory } from './remember.ts'
import { type MachinePiece, pieceMaker } from './part.ts'
import { backLegs, columnAt, frontLegs, levels, pinRadius, tipLevel } from './places.ts'
import { hasLeaf, pinMood, type Pose } from './pose.ts'

/** How long a pin's legs are, from the tip to the bow. */
export const legLength = 26
/** A leg is parted where it is inside the top plate. */
const [under, over] = levels.topPlate
const [underCard, overCard] = levels.card

/** Where a pin's legs are: the front one is led along its slot, and the other slides in its hole. */
export const legsOf = ({ frame }: Pose, column: Column): { front: Vector; back: Vector; tip: number } => {
  const push = measureOfColumn(frame.pinLeans, column)
  const x = columnAt(column)
  const apart = backLegs - frontLegs
  const turned = apart - Math.sqrt(apart * apart - push * push)
  const tip = tipLevel(measureOfColumn(frame.pinHeights, column))
  return {
    tip,
    front: [x - push, frontLegs - forwardOf(push), tip],
    back: [x, backLegs - forwardOf(push) - turned, tip],
  }
}

const atLevel = ([x, y]: Vector, z: number): Vector => [x, y, z]

/** A feeler pin, bent like a U: a tip of either leg above the top plate, and below it the legs and the bow. */
const pin = (pose: Pose, column: Column): MachinePiece[] => {
  const part = partId({ kind: 'pin', column })
  const make = pieceMaker('pin', 'pins', 'metal', { part, mood: pinMood(pose, column), order: column })
  const { front, back, tip } = legsOf(pose, column)
  const bow = tip - legLength
  const isThrough = tip - pinRadius > overCard
  return [
    ...bentWire(
      [atLevel(front, under), atLevel(front, bow), atLevel(back, bow), atLevel(back, under)],
      pinRadius,
      [true, true],
    ),
    wire(atLevel(front, over), atLevel(front, tip - pinRadius), pinRadius, [true, false]),
    wire(atLevel(back, over), atLevel(back, Math.min(tip - pinRadius, underCard)), pinRadius, [
      true,
      isThrough,
    ]),
    // What has come up through the card.
    isThrough
      ? wire(atLevel(back, overCard), atLevel(back, tip - pinRadius), pinRadius, [true, false])
      : null,
  ].map(make)
}

/** Where the lift springs are, and the rail under them. */
export const springsAt = 25

const liftSpring = (pose: Pose, column: Column): MachinePiece => {
  const { front, back, tip } = legsOf(pose, column)
  const share = (springsAt - front[1]) / (back[1] - front[1])
  const x = front[0] + (back[0] - front[0]) * share
  const top: Vector = [x, springsAt, tip - legLength - pinRadius - 0.1]
  const make = pieceMaker('lift-spring', 'pins', 'metal', { order: column })
  return make(coil([columnAt(column), springsAt, levels.springRail[1] + 0.1], top, 1, 6))
}

/** The leaf springs: blades behind the front legs, each with a foot that presses its leg to the right. */
export const leaves = {
  top: -6,
  foot: -12,
  low: -14,
  thick: 0.25,
  front: frontLegs + 0.95,
  back: frontLegs + 2.6,
}

const leafSpring = (pose: Pose, column: Column): MachinePiece[] => {
  const { front } = legsOf(pose, column)
  // Without its foot nothing presses the pin back.
  const isWhole = hasLeaf(pose, column)
  const make = pieceMaker('leaf-spring', 'pins', 'metal', {
    order: column,
    mood: isWhole ? 'plain' : 'broken',
  })
  const rest = columnAt(column) - pinRadius
  const touching = isWhole ? front[0] - pinRadius : rest
  const at = (right: number, up: number): Vector[] => [
    [right - leaves.thick, leaves.front, up],
    [right, leaves.front, up],
    [right, leaves.back, up],
    [right - leaves.thick, leaves.back, up],
  ]
  return [
    make(prism(at(touching, leaves.low), at(rest, leaves.top))),
    make(
      isWhole
        ? box([touching - leaves.thick, front[1] - 0.4, leaves.low], [touching, leaves.front, leaves.foot], {
            back: { kind: 'joint' },
          })
        : null,
    ),
  ]
}

/** What of the legs is in the card's holes: to be seen when the card is taken away. */
export const pinThrough = (pose: Pose): MachinePiece[] =>
  allColumns.map((column) => {
    const part = partId({ kind: 'pin', column })
    const make = pieceMaker('pin', 'pins', 'metal', { part, mood: pinMood(pose, column), order: column })
    const { back, tip } = legsOf(pose, column)
    const isHigh = tip - pinRadius > overCard
    return make(
      isHigh ? wire(atLevel(back, underCard), atLevel(back, overCard), pinRadius, [true, true]) : null,
    )
  })

/** The pins with their springs. */
export const pins = (pose: Pose): MachinePiece[] =>
  allColumns.flatMap((column) =>
    remember(column, keyOf(pose, column), () => [
      ...pin(pose, column),
      liftSpring(pose, column),
      ...leafSpring(pose, column),
    ]),
  )

const remember = createMemory<MachinePiece[]>()

/** All that the pieces of a column depend on. */
const keyOf = (pose: Pose, column: Column): string =>
  [
    measureOfColumn(pose.frame.pinHeights, column),
    measureOfColumn(pose.frame.pinLeans, column),
    pinMood(pose, column),
    hasLeaf(pose, column),
  ].join(' ')
