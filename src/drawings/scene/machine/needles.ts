import { needleName } from '../../../mechanism/bed.ts'
import { allNeedles, markOfNeedle, measureOfNeedle, type Needle } from '../../../mechanism/indices.ts'
import { holdingOf } from '../../shared/detail/needle-state.ts'
import { shape as profile } from '../../shared/detail/profile.ts'
import { along, bentWire, box, coil, type Hull, prism } from '../engine/piece.ts'
import type { Vector } from '../engine/vector.ts'
import { createMemory } from './remember.ts'
import { type MachinePiece, type Mood, pieceMaker } from './part.ts'
import { bedLevels, buttLevel, needleAt, needleHalf, planes, stretch } from './places.ts'
import { moodOf, type Pose } from './pose.ts'

/** The needles that are drawn. */
export const stretchNeedles: readonly Needle[] = allNeedles.slice(stretch.first, stretch.last + 1)

/** From front to back: the hook, where the shank begins to bend, the butt, and the spur's end; and thicknesses. */
export const shape = {
  hook: -55,
  bend: -24,
  butt: [-1.6, 0],
  spur: 5.8,
  end: 7,
  thick: 1.8,
  /** How far the shank's upper side is below the butt's top, drawn. */
  shank: buttLevel(0) - bedLevels.top,
} as const

/** How a needle is seen: as moved where it is held, or selected. */
export const moodOfNeedle = (pose: Pose, needle: Needle): Mood => {
  const holding = holdingOf(pose.frame, needle)
  const isSelected = measureOfNeedle(pose.frame.needleTravels, needle) > 0.5
  return moodOf(pose, `needle.${needleName(needle)}`, holding === 'held' || holding === 'extra' || isSelected)
}

/** Half the width of a spur. */
const spurHalf = 0.3

/** A part of a butt between two levels, leaning to the right by so much at either. */
const upright = (
  x: number,
  front: number,
  back: number,
  [low, high]: readonly [number, number],
  [leanLow, leanHigh]: readonly [number, number],
  which: 'lower' | 'upper',
): Hull => {
  const at = (middle: number, level: number): Vector[] => [
    [middle - needleHalf, front, level],
    [middle + needleHalf, front, level],
    [middle + needleHalf, back, level],
    [middle - needleHalf, back, level],
  ]
  const joint = { kind: 'joint' } as const
  return prism(
    at(x + leanLow, low),
    at(x + leanHigh, high),
    which === 'lower' ? { last: joint } : { first: joint },
  )
}

/** A needle: its hook, its shank, which bends where its butt is pressed down, its butt, and its spur. */
const needle = (pose: Pose, index: Needle, order: number): MachinePiece[] => {
  const { condition, frame } = pose
  const part = `needle.${needleName(index)}` as const
  const mood = moodOfNeedle(pose, index)
  const options = { part, mood, order }
  const make = pieceMaker('needle', 'needles', 'metal', options)
  const front = pieceMaker('needle', 'shanks', 'metal', options)
  const butt = pieceMaker('butt', 'needles', 'metal', options)
  const spur = pieceMaker('spur', 'needles', 'metal', options)
  const x = needleAt(index)
  const height = measureOfNeedle(frame.buttHeights, index)
  const y = -measureOfNeedle(frame.needleTravels, index)
  const isGone = markOfNeedle(condition.needleGone, index) === 1
  const lean = markOfNeedle(condition.needleBent, index) === 1 ? profile.lean : 0
  const top = buttLevel(height)
  const shank = top - shape.shank
  const level = bedLevels.top
  const spurTop = buttLevel(height - profile.spurDrop)
  const spurLow = buttLevel(height - profile.spurDrop - profile.spurThick)
  const [from, to] = [y + shape.bend, y + shape.end]
  const rear = (right: number, front: number, back: number): Vector[] => {
    const at = (place: number): number => level + ((shank - level) * (place - from)) / (y - from)
    return [
      [right, front, at(front) - shape.thick],
      [right, back, at(back) - shape.thick],
      [right, back, at(back)],
      [right, front, at(front)],
    ]
  }
  const shankPart = (front: number, back: number, isLast: boolean): Hull =>
    prism(rear(x - needleHalf, front, back), rear(x + needleHalf, front, back), {
      sides: { 3: { kind: isLast ? 'flush' : 'joint' }, ...(isLast ? {} : { 1: { kind: 'joint' } }) },
    })
  const spurLean = lean * Math.max(0, (spurLow - planes.up) / (top - planes.up))
  const spurPart = (low: number, high: number, isLower: boolean): Hull | null =>
    low >= high
      ? null
      : box(
          [x - spurHalf + spurLean, y + shape.butt[1], low],
          [x + spurHalf + spurLean, y + shape.spur, high],
          { front: { kind: 'joint' }, ...(isLower && high === planes.up ? { top: { kind: 'joint' } } : {}) },
        )
  return [
    ...bentWire(
      [
        [x, y + shape.hook + 1, level - 0.9],
        [x, y + shape.hook - 1.2, level + 0.2],
        [x, y + shape.hook - 0.6, level + 2],
        [x, y + shape.hook + 1.6, level + 1.6],
      ],
      0.36,
      [true, false],
    ).map(front),
    front(
      box([x - needleHalf, y + shape.hook, level - shape.thick], [x + needleHalf, planes.edge, level], {
        back: { kind: 'joint' },
      }),
    ),
    front(
      box([x - needleHalf, planes.edge, level - shape.thick], [x + needleHalf, from, level], {
        front: { kind: 'joint' },
        back: { kind: 'joint' },
      }),
    ),
    front(shankPart(from, planes.front, false)),
    make(shankPart(planes.front, to, true)),
    ...[
      isGone ? null : upright(x, y + shape.butt[0], y + shape.butt[1], [shank, planes.up], [0, 0], 'lower'),
      isGone ? null : upright(x, y + shape.butt[0], y + shape.butt[1], [planes.up, top], [0, lean], 'upper'),
    ].map(butt),
    ...[
      isGone ? null : spurPart(spurLow, Math.min(spurTop, planes.up), true),
      isGone ? null : spurPart(Math.max(spurLow, planes.up), spurTop, false),
    ].map(spur),
  ]
}

/** The springs under the shanks, which press the butts up. */
const buttSpring = (pose: Pose, index: Needle, order: number): MachinePiece => {
  const make = pieceMaker('butt-spring', 'needles', 'metal', { order })
  const height = measureOfNeedle(pose.frame.buttHeights, index)
  const y = -measureOfNeedle(pose.frame.needleTravels, index)
  const shank = buttLevel(height) - shape.shank
  const slope = (shank - bedLevels.top) / -shape.bend
  const top = shank - shape.thick + slope * (3.5 - y) - 0.05
  const x = needleAt(index)
  return make(coil([x, 3, bedLevels.floor], [x, 3, top], 0.38, 5))
}

/** The needles of the stretch with the springs under their butts. */
export const needles = (pose: Pose): MachinePiece[] =>
  stretchNeedles.flatMap((index, n) =>
    remember(index, keyOf(pose, index), () => [
      ...needle(pose, index, n + 1),
      buttSpring(pose, index, n + 1),
    ]),
  )

const remember = createMemory<MachinePiece[]>()

/** All that a needle's pieces depend on. */
const keyOf = (pose: Pose, index: Needle): string =>
  [
    measureOfNeedle(pose.frame.buttHeights, index),
    measureOfNeedle(pose.frame.needleTravels, index),
    markOfNeedle(pose.condition.needleGone, index),
    markOfNeedle(pose.condition.needleBent, index),
    moodOfNeedle(pose, index),
  ].join(' ')

/** The retainer bar, across all needles: it presses them lightly down in their tricks. */
export const retainer = (pose: Pose): MachinePiece[] => {
  const mood = moodOf(pose, 'retainer', false)
  const level = bedLevels.top
  const felt = pieceMaker('retainer', 'retainer', 'felt', { part: 'retainer', mood })
  const bar = pieceMaker('retainer', 'retainer', 'metal', { part: 'retainer', mood })
  return [
    felt(
      box([-58, -37, level + 0.05], [58, -30, level + 2], { right: { kind: 'cut' }, top: { kind: 'joint' } }),
    ),
    bar(
      along(
        [
          [-38, level + 2],
          [-29, level + 2],
          [-29, level + 4],
          [-38, level + 4],
        ],
        -58,
        64,
      ),
    ),
  ]
}
