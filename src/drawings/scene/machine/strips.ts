import { needleName, stripOfColumn } from '../../../mechanism/bed.ts'
import {
  allColumns,
  allStrips,
  measureOfStrip,
  ofNeedle,
  type Needle,
  type Strip,
} from '../../../mechanism/indices.ts'
import { catchOf } from '../../shared/detail/needle-state.ts'
import { shape as profile } from '../../shared/detail/profile.ts'
import { box, coil, prism } from '../engine/piece.ts'
import type { Vector } from '../engine/vector.ts'
import { stretchNeedles } from './needles.ts'
import { createMemory } from './remember.ts'
import { type MachinePiece, type Mood, pieceMaker } from './part.ts'
import {
  buttLevel,
  columnAt,
  heightTimes,
  needleAt,
  planes,
  rockers,
  rodRadius,
  stripAt,
  strips as place,
  stripEnds,
} from './places.ts'
import { isStripMoved, moodOf, type Pose, stripOf } from './pose.ts'

const shiftOf = ({ frame }: Pose, strip: Strip): number => measureOfStrip(frame.stripShifts, strip)

const stripMood = (pose: Pose, strip: Strip): Mood =>
  moodOf(pose, `strip.${strip}`, isStripMoved(pose, strip))

/** A strip: its bar, and the lug that its three rods push to the right. */
const strip = (pose: Pose, number: Strip): MachinePiece[] => {
  const make = pieceMaker('strip', 'strips', 'metal', {
    part: `strip.${number}`,
    mood: stripMood(pose, number),
  })
  const shift = shiftOf(pose, number)
  const y = stripAt(number)
  const lugs = allColumns
    .filter((column) => stripOfColumn(column) === number)
    .map((column) => {
      const x = columnAt(column) + rockers.aside + rodRadius + 0.05 + shift
      return make(
        box([x, y + place.lug - 0.5, place.high], [x + 0.9, y + place.lug + 0.5, place.high + 6], {
          bottom: { kind: 'joint' },
        }),
      )
    })
  return [
    make(
      box(
        [stripEnds.left + shift, y - place.half, place.low],
        [stripEnds.right + shift, y + place.half, place.high],
        { left: { kind: 'cut' }, right: { kind: 'cut' } },
      ),
    ),
    ...lugs,
  ]
}

/** Half the width of a catch; where its tip is, where its nose ends, and where it leaves the bed, from front to back. */
export const finger = { half: 0.4, tip: 3.4, nose: 5.6, leaves: planes.back } as const

/** How far the middle of a catch at rest is to the left of its needle's, where it takes a butt after the model's reach. */
export const asideOf = (reach: number): number => profile.halfStem + reach + finger.half

/**
 * The catch of a needle: a riser on its strip, an arm to the front, and a nose that comes over the spur. Its nose is
 * where the model's hold has it; the arm bends to there.
 */
const needleCatch = (pose: Pose, needle: Needle, order: number): MachinePiece[] => {
  const number = stripOf(pose, needle)
  const { reach } = pose.condition
  const { shift, tip, under } = catchOf(pose.frame, needle)
  const isBroken = ofNeedle(pose.condition.catchBroken, needle) === 1
  const make = pieceMaker('catch', 'strips', 'metal', {
    part: `catch.${needleName(needle)}`,
    mood: isBroken ? 'broken' : stripMood(pose, number),
    order,
  })
  const root = needleAt(needle) - asideOf(reach) + shift
  const nose = needleAt(needle) - asideOf(reach) + tip
  const y = stripAt(number) + place.riser
  const low = buttLevel(under)
  // The upper side slopes to the needle: a spur that comes down on it pushes the nose aside.
  const [tipHigh, rootHigh] = [profile.tipThick, profile.tipThick + profile.slope * 2 * finger.half].map(
    (height) => low + height * heightTimes.bed,
  ) as [number, number]
  const section = (x: number, front: number, share = 1): Vector[] => [
    [x - finger.half, front, low],
    [x + finger.half, front, low],
    [x + finger.half, front, low + (tipHigh - low) * share],
    [x - finger.half, front, low + (rootHigh - low) * share],
  ]
  const at = (y: number): Vector[] => section(root + ((back - y) / (back - finger.nose)) * (nose - root), y)
  const back = y - 0.4
  const torn = (back + finger.nose) / 2
  const joint = { kind: 'joint' } as const
  return [
    make(
      box([root - finger.half, back, place.high], [root + finger.half, back + 0.8, tipHigh], {
        bottom: joint,
      }),
    ),
    make(
      isBroken && torn > finger.leaves
        ? prism(at(back), at(torn), { last: { kind: 'cut' } })
        : prism(at(back), at(finger.leaves), { last: joint }),
    ),
    make(
      isBroken
        ? torn > finger.leaves
          ? null
          : prism(at(finger.leaves), at(torn), { first: joint, last: { kind: 'cut' } })
        : prism(at(finger.leaves), at(finger.nose), { first: joint, last: joint }),
    ),
    make(
      isBroken ? null : prism(section(nose, finger.nose), section(nose, finger.tip, 0.6), { first: joint }),
    ),
  ]
}

/** The guides that keep the strips upright: posts between them at a few places along the bed. */
const guidePlaces = [-47.25 - 2.8, -2.25 - 2.8, 42.75 - 2.8 + 4.5] as const

const guides = (): MachinePiece[] => {
  const make = pieceMaker('guide', 'strips', 'frame')
  return guidePlaces.flatMap((x) =>
    [...allStrips.map((number) => stripAt(number) - 2), stripAt(1 as Strip) + 2].map((y) =>
      make(
        box([x - 1, y - 1.15, place.low], [x + 1, y + 1.15, place.high - 1.4], { bottom: { kind: 'joint' } }),
      ),
    ),
  )
}

/** The return springs at the right end: each presses its strip back to the left. */
const returnSprings = (pose: Pose): MachinePiece[] =>
  allStrips.map((number) => {
    const make = pieceMaker('return-spring', 'strips', 'metal', { part: null })
    const level = (place.low + place.high) / 2
    return make(
      coil(
        [stripEnds.right + shiftOf(pose, number), stripAt(number), level],
        [stripEnds.wall, stripAt(number), level],
        1.3,
        6,
      ),
    )
  })

/** The eight strips with their catches, guides and springs. */
export const strips = (pose: Pose): MachinePiece[] => [
  ...allStrips.flatMap((number) =>
    remember(number, `${shiftOf(pose, number)} ${stripMood(pose, number)}`, () => strip(pose, number)),
  ),
  ...stretchNeedles.flatMap((needle, n) =>
    remember(needleName(needle), catchKey(pose, needle), () => needleCatch(pose, needle, n + 1)),
  ),
  ...remember('guides', '', guides),
  ...remember('springs', allStrips.map((number) => shiftOf(pose, number)).join(' '), () =>
    returnSprings(pose),
  ),
]

const remember = createMemory<MachinePiece[]>()

/** All that a catch's pieces depend on. */
const catchKey = (pose: Pose, needle: Needle): string => {
  const { shift, tip, under } = catchOf(pose.frame, needle)
  const number = stripOf(pose, needle)
  const isBroken = ofNeedle(pose.condition.catchBroken, needle)
  return [shift, tip, under, number, isBroken, pose.condition.reach, stripMood(pose, number)].join(' ')
}
