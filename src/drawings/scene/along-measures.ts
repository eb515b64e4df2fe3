import type { Frame } from '../../mechanism/frame.ts'
import { measureOfNeedle, type Needle } from '../../mechanism/indices.ts'
import { stripOfNeedle } from '../../mechanism/bed.ts'
import { presserOf } from '../../mechanism/condition.ts'
import { cams } from '../../mechanism/dimensions.ts'
import { partsOf, type SceneStep } from '../../words/figures/scene-step.ts'
import { millimetres } from '../../words/lists.ts'
import { catchOf } from '../shared/detail/needle-state.ts'
import { shape as profile } from '../shared/detail/profile.ts'
import type { Extent } from './engine/extent.ts'
import type { Vector } from './engine/vector.ts'
import { shape as needleShape } from './machine/needles.ts'
import { asideOf, finger } from './machine/strips.ts'
import { buttLevel, needleAt } from './machine/places.ts'
import { type Datum, leastMeasured, type Measure } from './measure.ts'

/** Beside a butt, clear of it, in mm. */
const beside = 1.5

/** The needles of which a step speaks, the subject's first; a catch's is its own. */
const needlesOf = (step: SceneStep): Needle[] =>
  partsOf(step).flatMap((part) => (part.kind === 'needle' || part.kind === 'catch' ? [part.needle] : []))

/** A height in the model's mm at a place along the bed, at the butts' backs. */
const pointAt = (needle: number, height: number): Vector => [
  needleAt(needle),
  needleShape.butt[1],
  buttLevel(height),
]

/** How far something is below the rest level at a place along the bed; the line is so far to the right of it. */
const belowRest = (at: number, depth: number, right: number): Measure[] =>
  depth < leastMeasured
    ? []
    : [
        {
          from: pointAt(at, 0),
          to: pointAt(at, -depth),
          aside: [right, 0, 0],
          words: millimetres(depth),
          lettered: 'from',
        },
      ]

/** How far a butt's top is below the rest level; the line is so many times as far `ahead`, where the carriage goes, as others are aside. */
const depthOf = (needle: Needle, { buttHeights, pass }: Frame, ahead: number): Measure[] =>
  belowRest(needle, -measureOfNeedle(buttHeights, needle), ahead * pass.way * beside)

/** How far the first gate's lower edge is below the rest level, before the gate. */
const gateOf = ({ condition, x, pass: { way } }: Frame): Measure[] =>
  condition.carriagePlain ? [] : belowRest(x - way * condition.dimensions.gateLag, condition.gate1, way * 0.7)

/** How deep the presser dips, at the end of its flat that comes to a butt first. */
const dipOf = ({ condition, x, pass: { way } }: Frame): Measure[] =>
  belowRest(x + way * cams.presserFlat, presserOf(condition, way), way * 0.6)

/** How far a butt is below the first gate's edge, or above it; `whose` comes before the words. */
const roomOf = (needle: Needle, { buttHeights, condition, pass }: Frame, whose = ''): Measure => {
  const height = measureOfNeedle(buttHeights, needle)
  const edge = -condition.gate1
  const room = edge - height
  return {
    from: pointAt(needle, Math.max(height, edge)),
    to: pointAt(needle, Math.min(height, edge)),
    aside: [-pass.way * beside, 0, 0],
    words: `${whose}${room > 0 ? 'clears' : 'overlaps'} ${millimetres(Math.abs(room))}`,
    lettered: room > 0 ? 'to' : 'from',
  }
}

/** The room that butts have at the first gate: dimensioned at each, or once where all have the same. */
const roomsOf = (needles: readonly Needle[], frame: Frame): Measure[] => {
  const rooms = needles.map((needle) => roomOf(needle, frame))
  const isSame = rooms.every(({ words }) => words === rooms[0]?.words)
  return rooms.length > 1 && isSame
    ? needles.slice(0, 1).map((needle) => roomOf(needle, frame, 'each '))
    : rooms
}

/** How far above a catch's nose the lines of its shift and of its reach are, in mm, and that of its shift alone. */
const aboveNose = { shift: 6.5, reach: 10, alone: 3 } as const

/** How far a needle's catch is shifted from its rest, and, where that is asked for, how far it must be to take the butt. */
const shiftOf = (needle: Needle, frame: Frame, hasReach: boolean): Measure[] => {
  const { shift, tip, under, reach } = catchOf(frame, needle)
  const rest = needleAt(needle) - asideOf(reach) + finger.half
  const at = (right: number): Vector => [rest + right, finger.nose, buttLevel(under)]
  return shift < leastMeasured
    ? []
    : [
        {
          from: at(0),
          to: at(tip),
          aside: [0, 0, hasReach ? aboveNose.shift : aboveNose.alone],
          words: `shifted ${millimetres(tip)}`,
        },
        ...(hasReach
          ? [
              {
                from: at(0),
                to: at(reach),
                aside: [0, 0, aboveNose.reach] as const,
                words: `reach ${millimetres(reach)}`,
              },
            ]
          : []),
      ]
}

/** How far a dipped spur is below the nose of its catch, or above it: then it meets the nose from the side. */
const spareOf = (needle: Needle, frame: Frame): Measure[] => {
  const height = measureOfNeedle(frame.buttHeights, needle) - profile.spurDrop
  const { under, shift } = catchOf(frame, needle)
  const spare = under - height
  return Math.abs(spare) < leastMeasured / 2 || shift < leastMeasured
    ? []
    : [
        {
          from: pointAt(needle, Math.max(under, height)),
          to: pointAt(needle, Math.min(under, height)),
          aside: [-frame.pass.way * beside, 0, 0],
          words: `${millimetres(Math.abs(spare))} ${spare > 0 ? 'to spare' : 'too high'}`,
          lettered: 'to',
        },
      ]
}

/**
 * The dimensions of the bed cut open behind its needles. With a catch as the subject: how far it is shifted and must be,
 * how low its butt is, and how far the spur is below its nose; with the presser its dip; with a gate the room that butts
 * have at it; with a needle how low butts are and, where gates are, the edge of the first; with a strip how far its catches
 * are shifted at the needles of which the step speaks, and how low their butts are.
 */
export const alongMeasures = (step: SceneStep, frame: Frame): Measure[] => {
  const { subject, layers } = step
  if (subject?.kind === 'presser') return dipOf(frame)
  if (subject?.kind === 'gate') return [...gateOf(frame), ...roomsOf(needlesOf(step), frame)]
  if (subject?.kind === 'catch')
    return [
      ...shiftOf(subject.needle, frame, true),
      ...depthOf(subject.needle, frame, 1),
      ...spareOf(subject.needle, frame),
    ]
  if (subject?.kind === 'strip')
    return needlesOf(step)
      .filter((needle) => stripOfNeedle(needle, frame.condition) === subject.strip)
      .flatMap((needle) => [...shiftOf(needle, frame, false), ...depthOf(needle, frame, -2)])
  return subject?.kind === 'needle'
    ? [...depthOf(subject.needle, frame, -1), ...(layers?.includes('gates') === true ? gateOf(frame) : [])]
    : []
}

/** How far the line of a level goes on beyond what is drawn, in mm. */
const beyond = 1

/** The butts' rest level, across what fills the picture. */
export const restLine = ({ least, most }: Extent): Datum => ({
  from: [least[0] - beyond, needleShape.butt[1], buttLevel(0)],
  to: [most[0] + beyond, needleShape.butt[1], buttLevel(0)],
  words: 'rest level',
})
