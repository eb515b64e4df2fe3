import { stripOfColumn } from '../../../mechanism/bed.ts'
import { allColumns } from '../../../mechanism/indices.ts'
import { fullShift } from '../../../mechanism/rocker.ts'
import type { NumberedPart } from '../../../words/numbered-parts.ts'
import { forwardOf } from '../../shared/wedge.ts'
import { along, box, type BoxLook, type Mark, wire } from '../engine/piece.ts'
import type { Vector } from '../engine/vector.ts'
import { type MachinePiece, type Mood, pieceMaker } from './part.ts'
import { leaves, springsAt } from './pins.ts'
import { createMemory } from './remember.ts'
import { moodOf, type Pose } from './pose.ts'
import {
  backLegs,
  cheekAt,
  cheekThick,
  cheekTop,
  columnAt,
  frontLegs,
  levels,
  pinRadius,
  rockers,
  rodRadius,
  stripAt,
  strips,
  tipLevel,
} from './places.ts'

/** A long hole between two points of a level face, of a half width, in corners. */
const longHole = (from: Vector, to: Vector, half: number, corners = 10): Vector[] => {
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0])
  return Array.from({ length: corners + 2 }, (_, n) => {
    const isFar = n <= corners / 2
    const turn = angle - Math.PI / 2 + ((isFar ? n : n - 1) / corners) * 2 * Math.PI
    const [x, y, z] = isFar ? to : from
    return [x + half * Math.cos(turn), y + half * Math.sin(turn), z]
  })
}

/** A round hole in a level face. */
export const roundHole = (middle: Vector, radius: number, corners = 12): Vector[] =>
  Array.from({ length: corners }, (_, n) => {
    const angle = (n / corners) * 2 * Math.PI
    return [middle[0] + radius * Math.cos(angle), middle[1] + radius * Math.sin(angle), middle[2]]
  })

/** From one cheek to the other; the end at the right is hatched where that cheek is taken off. */
const rail = (
  name: NumberedPart,
  front: number,
  back: number,
  [low, high]: readonly [number, number],
  look: BoxLook = {},
  mood: Mood = 'plain',
): MachinePiece =>
  pieceMaker(name, 'frame', 'frame', { mood })(
    box([-cheekAt, front, low], [cheekAt, back, high], { right: { kind: 'cut' }, ...look }),
  )

/** The slots of the front legs, on the slant, and the round holes of the back legs. */
const topPlateMarks = ({ condition }: Pose, level: number): Mark[] => {
  const { sweepThrow, hole } = condition.dimensions
  return allColumns.flatMap((column): Mark[] => {
    const x = columnAt(column)
    const slot = longHole(
      [x, frontLegs, level],
      [x - sweepThrow, frontLegs - forwardOf(sweepThrow), level],
      pinRadius + 0.15,
    )
    const middle: Vector = [x, backLegs - forwardOf(sweepThrow) / 2 - 0.1, level]
    return [
      { look: 'opening', points: slot },
      { look: 'opening', points: roundHole(middle, hole / 2) },
    ]
  })
}

/** The slots of the rods, as long as the rods go over. */
const plateMarks = ({ condition }: Pose, level: number): Mark[] => {
  const over = Math.max(0, fullShift(condition.dimensions))
  return allColumns.map((column) => {
    const x = columnAt(column) + rockers.aside
    const y = stripAt(stripOfColumn(column)) + strips.lug
    return { look: 'opening', points: longHole([x, y, level], [x + over, y, level], rodRadius + 0.35) }
  })
}

/** The ends of the pins on which the rockers turn. */
const pivotMarks = (front: number): Mark[] =>
  allColumns.map((column) => ({
    look: 'hole',
    points: roundHole([columnAt(column) + rockers.aside, levels.pivot, 0], 0.9).map(([x, z]): Vector => [
      x,
      front,
      z,
    ]),
  }))

const cheekOutline = [
  [12, levels.plate[1]],
  [53, levels.plate[1]],
  [53, cheekTop],
  [17, cheekTop],
  [12, 2],
] as const

const cheek = (side: -1 | 1): MachinePiece => {
  const [inner, outer] = [side * cheekAt, side * (cheekAt + cheekThick)]
  const make = pieceMaker('cheek', side === 1 ? 'cheek' : 'frame', 'frame')
  return make(along(cheekOutline, Math.min(inner, outer), Math.max(inner, outer)))
}

const drawBar = { front: 27.3, back: 29.8 } as const

/** How far to the right of each pin the draw bar is parted, as it moves: what else moves is clear of the planes there. */
const barJoint = 1.08

/** The draw bar, a piece for each column: at a turn it comes down on the bows and takes all pins with it. */
export const pullBar = ({ frame: { drawBar: at }, condition }: Pose): MachinePiece[] => {
  const make = pieceMaker('draw-bar', 'frame', 'metal')
  const down = at === undefined ? 0 : Math.max(0, tipLevel(condition.dimensions.pinHigh - at))
  const [low, high] = levels.drawBar
  const joints = [-cheekAt, ...allColumns.slice(0, -1).map((column) => columnAt(column) + barJoint), cheekAt]
  return remember('bar', `${down}`, () =>
    joints.slice(1).map((to, n) =>
      make(
        box([joints[n]!, drawBar.front, low - down], [to, drawBar.back, high - down], {
          left: { kind: n === 0 ? 'surface' : 'joint' },
          right: { kind: n === joints.length - 2 ? 'cut' : 'joint' },
        }),
      ),
    ),
  )
}

const remember = createMemory<MachinePiece[]>()

/** The lever for reading each row twice, on the outer side of the left cheek: down where it is on. */
const lever = (pose: Pose): MachinePiece[] => {
  const make = pieceMaker('lever', 'frame', 'metal', { part: 'lever', mood: moodOf(pose, 'lever', false) })
  const outer = -cheekAt - cheekThick
  const pivot = [33, -26] as const
  const [back, up] = pose.condition.turnTwice ? [-7, -9] : [-11, 3]
  const at = (on: number, aside: number): readonly [number, number] => {
    const length = Math.hypot(back, up)
    return [pivot[0] + (back * on - up * aside) / length, pivot[1] + (up * on + back * aside) / length]
  }
  const tip = at(12, 0)
  return [
    make(along([at(-2, 1.6), at(-2, -1.6), at(12, -1), at(12, 1)], outer - 1.1, outer - 0.1)),
    make(wire([outer - 1.1, tip[0], tip[1]], [outer - 5, tip[0], tip[1]], 1.3, [true, false])),
    make(wire([outer - 1.1, ...pivot], [outer - 2, ...pivot], 1.4, [true, false])),
  ]
}

/** What carries the reader's parts, and moves in no state: two cheeks, and between them plates and rails. */
export const frame = (pose: Pose): MachinePiece[] => [
  cheek(-1),
  cheek(1),
  ...lever(pose),
  rail('top-plate', 13, 35.5, levels.topPlate, {
    top: { marks: topPlateMarks(pose, levels.topPlate[1]) },
    bottom: { marks: topPlateMarks(pose, levels.topPlate[0]) },
  }),
  rail(
    'rail',
    rockers.front - 3.2,
    rockers.front - 1.4,
    levels.rails,
    {
      front: { marks: pivotMarks(rockers.front - 3.2) },
    },
    moodOf(pose, 'pivots', false),
  ),
  rail(
    'rail',
    rockers.back + 1.4,
    rockers.back + 3,
    levels.rails,
    {
      back: { marks: pivotMarks(rockers.back + 3) },
    },
    moodOf(pose, 'pivots', false),
  ),
  rail('lift-spring', springsAt - 1.5, springsAt + 1.5, levels.springRail),
  rail('leaf-spring', leaves.front + 0.1, leaves.back + 0.4, [leaves.top, levels.topPlate[0]]),
  pieceMaker(
    'plate',
    'plate',
    'frame',
  )(
    box([-cheekAt - cheekThick, 12, levels.plate[0]], [cheekAt + cheekThick, 53, levels.plate[1]], {
      top: { marks: plateMarks(pose, levels.plate[1]) },
      bottom: { marks: plateMarks(pose, levels.plate[0]) },
    }),
  ),
]
