import { allColumns, type Column } from '../../../mechanism/indices.ts'
import { dimensions } from '../../../mechanism/dimensions.ts'
import { type Hull, prism, wire } from '../engine/piece.ts'
import type { Vector } from '../engine/vector.ts'
import { forwardOf } from '../../shared/wedge.ts'
import { rowPitch } from './card.ts'
import { type MachinePiece, pieceMaker } from './part.ts'
import { legLength, legsOf } from './pins.ts'
import { backLegs, columnAt, levels, pinRadius, readAt } from './places.ts'
import { cardLies, holeAt, moodOf, pinMood, type Pose } from './pose.ts'

/** How far behind the middle of the holes the card and the top plate go on. */
const depth = 2.5
/** In how many slices the half of a hole is. */
const slices = 6
/** A column's stretch of a plate: its solid sides, and the slices behind its hole. */
const piecesOfStretch = slices + 2

/** A plate with a hole for each column, cut along the middle of its holes. */
interface Plate {
  readonly levels: readonly [low: number, high: number]
  /** How far to the right of the columns it lies. */
  readonly aside: number
  /** Where from front to back it is cut, at a place along it. */
  readonly front: (x: number) => number
  readonly hasHole: (column: Column) => boolean
}

/** One column's stretch of a plate, in convex pieces: always as many, null for those that are not there. */
const stretchOf = (plate: Plate, column: Column, radius: number): (Hull | null)[] => {
  const middle = columnAt(column) + plate.aside
  const [left, right] = [middle - dimensions.pitch / 2, middle + dimensions.pitch / 2]
  const [low, high] = plate.levels
  const piece = (from: readonly [number, number], to: readonly [number, number], isCut: boolean): Hull => {
    const at = (z: number): Vector[] => [
      [from[0], plate.front(from[0]) + from[1], z],
      [to[0], plate.front(to[0]) + to[1], z],
      [to[0], plate.front(to[0]) + depth, z],
      [from[0], plate.front(from[0]) + depth, z],
    ]
    return prism(at(low), at(high), {
      sides: {
        0: { kind: isCut ? 'cut' : 'surface' },
        1: { kind: 'joint' },
        3: { kind: 'joint' },
      },
    })
  }
  if (!plate.hasHole(column))
    return [piece([left, 0], [right, 0], true), ...Array<null>(piecesOfStretch - 1).fill(null)]
  const round = Array.from({ length: slices + 1 }, (_, n): readonly [number, number] => {
    const angle = (n / slices) * Math.PI
    return [middle - radius * Math.cos(angle), radius * Math.sin(angle)]
  })
  return [
    piece([left, 0], [middle - radius, 0], true),
    ...round.slice(1).map((to, n) => piece(round[n]!, to, false)),
    piece([middle + radius, 0], [right, 0], true),
  ]
}

/**
 * The reader cut along the row that is read, through the middle of the card's holes and of those of the top plate: what is
 * behind the cut, and the back legs of the pins, which are whole.
 */
export const rowMachine = (pose: Pose): MachinePiece[] => {
  const radius = pose.condition.dimensions.hole / 2
  const { aside, askew } = cardLies(pose)
  const isThere = pose.frame.pass.row !== null
  // While the card goes on, a row's holes are not over the pins, and are cut beside their middle.
  const roll = pose.frame.cardRoll ?? 0
  const row = Math.round(-roll)
  const cutRadius = Math.sqrt(Math.max(0, radius ** 2 - ((row + roll) * rowPitch) ** 2))
  // Behind a hole that is cut one sees its wall, plain, where what is cut is marked as what is broken.
  const [cutCard, wall] = [moodOf(pose, 'card', false), 'plain' as const].map((mood) =>
    pieceMaker('card', 'card', 'card', { part: 'card', mood }),
  )
  const cardPlate: Plate = {
    levels: levels.card,
    aside,
    front: (x) => readAt + (askew * (x - aside)) / dimensions.pitch,
    hasHole: (column) => cutRadius > 0 && ['hole', 'torn'].includes(holeAt(pose, row, column) ?? ''),
  }
  // As long as the legs slide to the front with their pushed pins, half of it before the middle and half behind.
  const slide = forwardOf(pose.condition.dimensions.sweepThrow)
  const topPlate: Plate = {
    levels: levels.topPlate,
    aside: 0,
    front: () => backLegs - slide / 2 - 0.1,
    hasHole: () => true,
  }
  return allColumns.flatMap((column) => {
    const { back, tip } = legsOf(pose, column)
    const leg = pieceMaker('pin', 'pins', 'metal', {
      part: `pin.${column}`,
      mood: pinMood(pose, column),
      order: column,
    })
    const at = (z: number): Vector => [back[0], back[1], z]
    return [
      ...stretchOf(cardPlate, column, cutRadius).map((shape, n) =>
        (n === 0 || n === piecesOfStretch - 1 ? cutCard : wall)!(isThere ? shape : null),
      ),
      ...stretchOf(topPlate, column, radius).map(pieceMaker('top-plate', 'frame', 'frame')),
      leg(wire(at(tip - legLength), at(tip - pinRadius), pinRadius, [true, false])),
    ]
  })
}
