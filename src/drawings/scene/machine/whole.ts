import { needleName, stripOfNeedle, wholeBedOf } from '../../../mechanism/bed.ts'
import { dimensions } from '../../../mechanism/dimensions.ts'
import {
  needlesOfBed,
  allStrips,
  markOfNeedle,
  measureOfNeedle,
  measureOfStrip,
} from '../../../mechanism/indices.ts'
import { shape as profile } from '../../shared/detail/profile.ts'
import { box, type Hull, prism, wire } from '../engine/piece.ts'
import type { Vector } from '../engine/vector.ts'
import { carriage } from './carriage.ts'
import { card, feed } from './card.ts'
import { frame, pullBar } from './frame.ts'
import { moodOfNeedle, shape as needleShape } from './needles.ts'
import { type MachinePiece, pieceMaker } from './part.ts'
import { pins } from './pins.ts'
import {
  bed as place,
  bedLevels,
  buttLevel,
  carriageAt,
  levels,
  needleAt,
  stripAt,
  strips,
} from './places.ts'
import { isStripMoved, moodOf, type Pose } from './pose.ts'
import { rockers } from './rockers.ts'
import { asideOf, finger } from './strips.ts'
import { sweepAndBelt } from './sweep.ts'

/** Where the turn marks are on the whole bed, with all of it in use, in mm to the right of the reader's middle. */
const marksOf = ({ condition }: Pose): readonly [number, number] => {
  const { first, last } = wholeBedOf(condition.dimensions.needles)
  return [needleAt(first - dimensions.turnMark), needleAt(last + dimensions.turnMark)]
}

/** The ends of the whole bed, which the carriage does not reach. */
const endsOf = (pose: Pose): readonly [number, number] => {
  const [left, right] = marksOf(pose)
  return [left - 54, right + 54]
}

/** Needles and butts are drawn so much wider than they are, halved, so that two hundred of them can be told apart. */
const coarse = 0.9

/** The bed’s own top: the needles lie on it, not in tricks. */
const bedTop = bedLevels.top - 0.6

/** How far to the back the carriage reaches with its arm: a plane there parts it from all that is behind it. */
const behindCarriage = 11.3

/** Where the deck is cut away beside the reader, so that one sees the strips. */
const cutAway = [-170, 170] as const

/** The long belt: where its wheels are, how large they are, how thick the belt is, and its levels. */
const longBelt = { back: 35, radius: 23, half: 0.35, low: -69, high: -66, shaft: levels.wheel } as const

const disc = (x: number, radius: number, low: number, high: number, sides = 24): Hull => {
  const at = (z: number): Vector[] =>
    Array.from({ length: sides }, (_, n) => {
      const angle = (n / sides) * 2 * Math.PI
      return [x + radius * Math.cos(angle), longBelt.back + radius * Math.sin(angle), z]
    })
  return prism(at(low), at(high))
}

/** The needles, each as its shank and its butt: a selected one reaches out to the front. */
const coarseNeedles = (pose: Pose): MachinePiece[] =>
  needlesOfBed(pose.condition.dimensions.needles).flatMap((needle) => {
    const part = `needle.${needleName(needle)}` as const
    const mood = moodOfNeedle(pose, needle)
    const [x, y] = [needleAt(needle), -measureOfNeedle(pose.frame.needleTravels, needle)]
    const shank = pieceMaker('needle', 'needles', 'metal', { part, mood })
    const butt = pieceMaker('butt', 'needles', 'metal', { part, mood })
    const { top } = bedLevels
    const isGone = markOfNeedle(pose.condition.needleGone, needle) === 1
    return [
      shank(box([x - coarse, y + needleShape.hook, bedTop], [x + coarse, y + needleShape.end, top])),
      butt(
        isGone
          ? null
          : box(
              [x - coarse, y + needleShape.butt[0], top],
              [
                x + coarse,
                y + needleShape.butt[1],
                buttLevel(measureOfNeedle(pose.frame.buttHeights, needle)),
              ],
            ),
      ),
    ]
  })

/** The strips along the whole bed, and the catches where the deck is cut away. */
const longStrips = (pose: Pose): MachinePiece[] => [
  ...allStrips.map((number) => {
    const [left, right] = endsOf(pose)
    const shift = measureOfStrip(pose.frame.stripShifts, number)
    const mood = moodOf(pose, `strip.${number}`, isStripMoved(pose, number))
    const y = stripAt(number)
    return pieceMaker('strip', 'strips', 'metal', { part: `strip.${number}`, mood })(
      box([left + 12 + shift, y - 1, strips.low], [right - 16 + shift, y + 1, strips.high]),
    )
  }),
  ...needlesOfBed(pose.condition.dimensions.needles)
    .filter((needle) => needleAt(needle) > cutAway[0] + 4 && needleAt(needle) < cutAway[1] - 4)
    .flatMap((needle) => {
      const number = stripOfNeedle(needle, pose.condition)
      const shift = measureOfStrip(pose.frame.stripShifts, number)
      const part = `catch.${needleName(needle)}` as const
      const mood = moodOf(pose, part, isStripMoved(pose, number))
      const x = needleAt(needle) - asideOf(pose.condition.reach) + shift
      const low = buttLevel(-pose.condition.dimensions.catchDepth - profile.spurDrop)
      const make = pieceMaker('catch', 'strips', 'metal', { part, mood })
      const arm = (front: number, back: number, joint: 'front' | 'back'): MachinePiece =>
        make(
          box([x - finger.half, front, low], [x + finger.half, back, low + 1], {
            [joint]: { kind: 'joint' },
          }),
        )
      return [arm(finger.tip, behindCarriage, 'back'), arm(behindCarriage, stripAt(number) - 0.1, 'front')]
    }),
]

/** The bed from end to end, its deck, cut away beside the reader, and a mark at either end of its front that the carriage must pass. */
const wholeBed = (pose: Pose): MachinePiece[] => {
  const make = pieceMaker('bed', 'bed', 'frame')
  const deck = pieceMaker('deck', 'deck', 'frame')
  const mark = pieceMaker('turn-mark', 'bed', 'metal', { part: 'turn', mood: moodOf(pose, 'turn', false) })
  const { floor, under, channel } = bedLevels
  const [left, right] = endsOf(pose)
  return [
    make(box([left, place.front, floor], [right, place.tricks, bedTop], { bottom: { kind: 'joint' } })),
    make(
      box([left, place.front, under], [right, place.tricks, floor], {
        top: { kind: 'flush' },
        back: { kind: 'joint' },
      }),
    ),
    make(box([left, place.tricks, under], [right, place.back, channel - 0.5], { front: { kind: 'joint' } })),
    make(
      box([left, place.back - 1.5, channel - 0.5], [right, place.back, -72], { bottom: { kind: 'joint' } }),
    ),
    deck(box([left, place.deck, -71.6], [right, place.deckBack, -70.05])),
    deck(
      box([left, place.deckBack, -71.6], [cutAway[0], place.back, -70.05], {
        front: { kind: 'flush' },
        right: { kind: 'cut' },
      }),
    ),
    deck(
      box([cutAway[1], place.deckBack, -71.6], [right, place.back, -70.05], {
        front: { kind: 'flush' },
        left: { kind: 'cut' },
      }),
    ),
    ...marksOf(pose).map((x) =>
      mark(box([x - 1.5, place.front - 3, bedTop - 9], [x + 1.5, place.front, bedTop + 3])),
    ),
  ]
}

/** The retainer bar along the whole bed. */
const longBar = (pose: Pose): MachinePiece => {
  const make = pieceMaker('retainer', 'retainer', 'metal', {
    part: 'retainer',
    mood: moodOf(pose, 'retainer', false),
  })
  const [left, right] = endsOf(pose)
  return make(box([left + 40, -38, bedLevels.top + 0.7], [right - 40, -29, bedLevels.top + 4]))
}

/** The belt that the carriage takes along: low behind the needles and round two wheels; a shaft of it drives the reader's. */
const carriageBelt = (pose: Pose): MachinePiece[] => {
  const make = pieceMaker('belt', 'belt', 'belt', { part: 'belt', mood: moodOf(pose, 'belt', false) })
  const wheel = pieceMaker('wheel', 'belt', 'metal')
  const arm = pieceMaker('carriage', 'carriage', 'metal', {
    part: 'carriage',
    mood: moodOf(pose, 'carriage', false),
  })
  const { back, radius, half, low, high } = longBelt
  const [left, right] = endsOf(pose)
  const middles = [left + 36, right - 36] as const
  const run = (y: number): Hull =>
    box([middles[0], y - half, low], [middles[1], y + half, high], {
      left: { kind: 'flush' },
      right: { kind: 'flush' },
    })
  const x = needleAt(pose.frame.x)
  // At the right cheek's outer side, from the belt up to the axle of the reader's wheel.
  const shaft: Vector = [74.7, 14.75, 0]
  return [
    make(run(back - radius - half)),
    make(run(back + radius + half)),
    ...middles.flatMap((middle) => [
      wheel(disc(middle, radius, low, high)),
      wheel(disc(middle, radius + 0.6, low - 0.7, low)),
      wheel(wire([middle, back, high], [middle, back, high + 3], 3, [true, false])),
    ]),
    wheel(wire([shaft[0], shaft[1], low], [shaft[0], shaft[1], high], 2.7, [true, true])),
    wheel(wire([shaft[0], shaft[1], high], [shaft[0], shaft[1], levels.wheel - 2.5], 0.9, [true, true])),
    wheel(
      box(
        [shaft[0] - 2.5, shaft[1] - 2.5, levels.wheel - 2.5],
        [shaft[0] + 2.5, shaft[1] + 1.5, levels.wheel + 2.5],
      ),
    ),
    // Parted at the carriage's plate, as its other parts are.
    ...[
      box(
        [x - 7, carriageAt.back, pose.condition.beltOff ? -66 : -68.5],
        [x + 7, behindCarriage, carriageAt.low],
        {
          top: { kind: 'joint' },
        },
      ),
      box([x - 7, carriageAt.back, carriageAt.low], [x + 7, behindCarriage, -48], {
        bottom: { kind: 'joint' },
      }),
    ].map(arm),
  ]
}

/** The belt's cover: its edge before the belt, its wall behind it, and its underside over the wheels' axles. */
const cover = { front: 11.4, back: 60, thick: 1.2, low: -59.4 } as const

/** The cover on the belt's right half, held at the bed's back; that on its left half is off. */
const beltCover = (pose: Pose): MachinePiece[] => {
  const make = pieceMaker('belt-cover', 'cover', 'frame')
  const [left, right] = [cutAway[1], endsOf(pose)[1]]
  const { front, back, thick, low } = cover
  const foot = bedLevels.channel - 3
  return [
    make(
      box([left, front, low], [right, back + thick, low + thick], {
        left: { kind: 'cut' },
      }),
    ),
    make(
      box([left, back, foot + thick], [right, back + thick, low], {
        left: { kind: 'cut' },
        top: { kind: 'joint' },
        bottom: { kind: 'joint' },
      }),
    ),
    make(
      box([left, place.back, foot], [right, back + thick, foot + thick], {
        left: { kind: 'cut' },
        top: { kind: 'joint' },
      }),
    ),
    make(box([right - thick, front, -70.05], [right, back, low])),
  ]
}

/** What of the reader is seen from so far: its springs are left out. */
const isCoarse = ({ name, shape }: MachinePiece): boolean =>
  shape?.kind !== 'coil' && name !== 'leaf-spring' && name !== 'lift-spring'

/** The whole machine from one end of the bed to the other, its small parts left out or drawn coarsely. */
export const wholeMachine = (pose: Pose): MachinePiece[] => [
  ...[
    ...card(pose),
    ...feed(pose),
    ...sweepAndBelt(pose),
    ...pins(pose),
    ...rockers(pose),
    ...frame(pose),
    ...pullBar(pose),
  ].filter(isCoarse),
  ...coarseNeedles(pose),
  ...longStrips(pose),
  ...wholeBed(pose),
  longBar(pose),
  ...carriageBelt(pose),
  ...beltCover(pose),
  ...carriage(pose).filter(({ layer }) => layer === 'carriage'),
]
