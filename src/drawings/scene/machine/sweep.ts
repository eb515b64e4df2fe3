import { dimensions } from '../../../mechanism/dimensions.ts'
import { wedgeFlank } from '../../shared/wedge.ts'
import { box, facing, type Hull, type Mark, prism, wire } from '../engine/piece.ts'
import type { Vector } from '../engine/vector.ts'
import { type MachinePiece, pieceMaker } from './part.ts'
import { cheekAt, cheekThick, columnAt, frontLegs, levels, pinRadius, tipLevel } from './places.ts'
import { moodOf, type Pose } from './pose.ts'

/** How far the wedge keeps from the legs: its slices are straight where its flank is hollow. */
const play = 0.24

/** From front to back: the wedge's back, and the belt. */
const wedgeBack = 23.8
const belt = { front: 21, back: 24, wheels: 74.7, radius: 4 } as const
/** Which points of the wedge's flank its slices begin and end at. */
const stations = Array.from({ length: 25 }, (_, n) => 2 * n)

/** The sweep: a wedge, in slices that are convex, on a carrier that the belt takes along. */
const sweep = (pose: Pose): MachinePiece[] => {
  const { frame, condition } = pose
  const make = pieceMaker('sweep', 'sweep', 'metal', { part: 'sweep', mood: moodOf(pose, 'sweep', false) })
  const x = columnAt(frame.sweepAt)
  const low = tipLevel(condition.sweepEdge)
  const high = levels.belt[0] - 1.2
  const flank = wedgeFlank(pinRadius + play)
  const points = stations.map((n): readonly [number, number] => {
    const { right, front } = flank[n]!
    return [x + right, frontLegs - front]
  })
  const slices = points.slice(1).map((to, n) => {
    const from = points[n]!
    const at = (z: number): Vector[] => [
      [from[0], from[1], z],
      [to[0], to[1], z],
      [to[0], wedgeBack, z],
      [from[0], wedgeBack, z],
    ]
    return make(
      prism(at(low), at(high), {
        sides: {
          ...(n === points.length - 2 ? {} : { 1: { kind: 'joint' } }),
          ...(n === 0 ? {} : { 3: { kind: 'joint' } }),
        },
      }),
    )
  })
  return [
    ...slices,
    make(box([x - 6, belt.front, high], [x + 4, belt.back, levels.belt[0]], { bottom: { kind: 'joint' } })),
  ]
}

/** The belt's teeth on one half of a run, as lines across it. */
const toothLines = (level: number, side: -1 | 1, sag: number): Mark[] =>
  Array.from({ length: 17 }, (_, n) => {
    const x = side * n * dimensions.pitch
    const down = sag * (1 - Math.abs(x) / belt.wheels)
    return {
      look: 'line',
      points: [
        [x, belt.front + 0.15, level - down],
        [x, belt.back - 0.15, level - down],
      ],
    }
  })

const disc = (x: number, radius: number): (readonly [number, number])[] =>
  Array.from({ length: 20 }, (_, n) => {
    const angle = (n / 20) * 2 * Math.PI
    return [x + radius * Math.cos(angle), levels.wheel + radius * Math.sin(angle)] as const
  })

/** How far a slack belt hangs down in the middle of its upper run, at most, in mm, and how far for each needle of slack. */
const [mostSag, sagANeedle] = [3.4, 1.1]

/** One of the belt's runs between the wheels, in two halves: each from level to level at the wheels and in the middle. */
const runOf = ([low, high]: readonly [number, number], sag: number): Hull[] => {
  const [front, back] = [belt.front + 0.15, belt.back - 0.15]
  const at = (x: number, down: number): Vector[] => [
    [x, front, low - down],
    [x, back, low - down],
    [x, back, high - down],
    [x, front, high - down],
  ]
  // At a wheel it goes on round it; in the middle, as the other half.
  const [wheel, joint] = [{ kind: 'flush' }, { kind: 'joint' }] as const
  const half = (from: Vector[], to: Vector[], side: -1 | 1): Hull =>
    prism(from, to, {
      first: side === -1 ? wheel : joint,
      last: side === -1 ? joint : wheel,
      sides: { 0: { marks: toothLines(low, side, sag) }, 2: { marks: toothLines(high, side, sag) } },
    })
  return [half(at(-belt.wheels, 0), at(0, sag), -1), half(at(0, sag), at(belt.wheels, 0), 1)]
}

/** The reader's belt round its two wheels, each on an arm of a cheek; the left one is turned with a finger. */
const drive = (pose: Pose): MachinePiece[] => {
  const make = pieceMaker('belt', 'sweep', 'belt', { part: 'belt', mood: moodOf(pose, 'belt', false) })
  const sag = Math.min(mostSag, sagANeedle * pose.condition.slack)
  const wheels = ([-1, 1] as const).flatMap((side) => {
    const wheel = pieceMaker('wheel', 'sweep', 'metal')
    const arm = pieceMaker('wheel', 'sweep', 'frame')
    const x = side * belt.wheels
    const [inner, outer] = [side * (cheekAt + cheekThick), side * (belt.wheels + 2)]
    return [
      // Between two rims, the belt lies on the wheel.
      wheel(facing(disc(x, belt.radius), belt.front, belt.back)),
      wheel(facing(disc(x, belt.radius + 1.4), belt.front - 0.5, belt.front)),
      wheel(facing(disc(x, belt.radius + 1.4), belt.back, belt.back + 0.5)),
      wheel(
        wire([x, belt.front - 3.4, levels.wheel], [x, belt.front - 0.5, levels.wheel], 1.2, [false, true]),
      ),
      wheel(wire([x, belt.back + 0.5, levels.wheel], [x, belt.back + 1.4, levels.wheel], 1, [true, true])),
      arm(
        box(
          [Math.min(inner, outer), belt.back + 1.4, 9],
          [Math.max(inner, outer), belt.back + 2.6, levels.wheel + 2],
        ),
      ),
      ...(side === -1
        ? [
            wheel(
              wire(
                [x - 3, belt.front - 2.6, levels.wheel + 2.4],
                [x - 3, belt.front - 0.5, levels.wheel + 2.4],
                0.9,
                [false, true],
              ),
            ),
          ]
        : []),
    ]
  })
  return [...runOf(levels.belt, 0).map(make), ...runOf(levels.upperBelt, sag).map(make), ...wheels]
}

/** The sweep and what moves it. */
export const sweepAndBelt = (pose: Pose): MachinePiece[] => [...sweep(pose), ...drive(pose)]
