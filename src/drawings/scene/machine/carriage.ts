import { cams, dimensions, gate2Start } from '../../../mechanism/dimensions.ts'
import { harmonic } from '../../../mechanism/frame.ts'
import { asideHeight, camSpansOf, carriageHalf, gateEdge, presserEdge } from '../../shared/cams.ts'
import { box, type Hull, prism } from '../engine/piece.ts'
import type { Vector } from '../engine/vector.ts'
import { shape as needle } from './needles.ts'
import { type MachinePiece, type Mood, pieceMaker } from './part.ts'
import { buttLevel, carriageAt as place, needleAt, needleHalf } from './places.ts'
import { moodOf, type Pose } from './pose.ts'

/** How thick the walls of the cams are by the side that leads butts, thin where turned butts pass behind, and how far a wall keeps from the butts that it leads. */
const thick = { back: 2.4, front: 1.2 } as const
const clearance = 0.08
/** Half a butt's width and some room, in needles. */
const buttWidth = (needleHalf + 0.2) / dimensions.pitch
const steps = 10

/** How far behind the presser's trailing edge, in needles, the steps of a wall are. */
const stations = ([from, to]: readonly [number, number]): number[] =>
  Array.from({ length: steps + 1 }, (_, n) => from + ((to - from) * n) / steps)

/** Where a wall leads the butts at so many needles behind the presser: how far to the back from their line. */
type Course = (behind: number) => number

/** A wall of a cam, in slices: at its back or at its front it leads butts along a course. */
const wall = (
  pose: Pose,
  span: readonly [number, number],
  course: Course,
  leads: 'back' | 'front',
  low: number,
): Hull[] => {
  const { x, pass } = pose.frame
  const at = (behind: number): readonly [number, number] => {
    const right = needleAt(x - pass.way * behind)
    // Clear of a butt's corners, too, which are before or behind its middle.
    const corners = [-buttWidth, 0, buttWidth].map((aside) => course(behind + aside))
    const back = leads === 'back' ? Math.min(...corners) : Math.max(...corners)
    return [right, leads === 'back' ? needle.butt[0] + back - clearance : needle.butt[1] + back + clearance]
  }
  const points = stations(span).map(at)
  if (pass.way === 1) points.reverse()
  const side = leads === 'back' ? -thick.back : thick.front
  const level = (
    [x0, y0]: readonly [number, number],
    [x1, y1]: readonly [number, number],
    z: number,
  ): Vector[] =>
    side < 0
      ? [
          [x0, y0 + side, z],
          [x1, y1 + side, z],
          [x1, y1, z],
          [x0, y0, z],
        ]
      : [
          [x0, y0, z],
          [x1, y1, z],
          [x1, y1 + side, z],
          [x0, y0 + side, z],
        ]
  return points.slice(1).map((to, n) =>
    prism(level(points[n]!, to, low), level(points[n]!, to, place.low), {
      sides: {
        ...(n === points.length - 2 ? {} : { 1: { kind: 'joint' } }),
        ...(n === 0 ? {} : { 3: { kind: 'joint' } }),
      },
    }),
  )
}

/** The presser, in slices along its lower edge. */
const presser = (pose: Pose): Hull[] => {
  const { frame, condition } = pose
  const { x, pass } = frame
  const edge = presserEdge(condition, pass.way, steps).map(
    // By half a butt it presses earlier, with the corner that it meets first, and lets go earlier.
    ({ ahead, depth }, n): readonly [number, number] => [
      needleAt(x + pass.way * (ahead + (n === 0 ? buttWidth : -buttWidth))),
      buttLevel(-depth),
    ],
  )
  // Where it is aside its edge has two points; a drawing has as many pieces in every state.
  while (edge.length < steps + 2) edge.splice(1, 0, [(edge[0]![0] + edge[1]![0]) / 2, edge[0]![1]])
  if (pass.way === -1) edge.reverse()
  const [front, back] = [needle.butt[0] - 1.2, needle.butt[1] + 1.2]
  return edge.slice(1).map(([x1, z1], n) => {
    const [x0, z0] = edge[n]!
    const low: Vector[] = [
      [x0, front, z0],
      [x1, front, z1],
      [x1, back, z1],
      [x0, back, z0],
    ]
    return prism(
      low,
      low.map(([right, y]): Vector => [right, y, place.low]),
      {
        sides: {
          ...(n === edge.length - 2 ? {} : { 1: { kind: 'joint' } }),
          ...(n === 0 ? {} : { 3: { kind: 'joint' } }),
        },
      },
    )
  })
}

const leadingSpan = [
  -(cams.presserFlat + cams.presserRamp + cams.gather),
  -(cams.presserFlat + cams.presserRamp + 2 * buttWidth),
] as const
const leading =
  (travel: number): Course =>
  (behind) =>
    travel * harmonic((-behind - cams.presserFlat - cams.presserRamp) / cams.gather)

const camsOf = (pose: Pose): MachinePiece[] => {
  const { condition } = pose
  const mood = (part: 'gate.1' | 'gate.2' | 'presser'): Mood =>
    pose.broken.has(part) || [...pose.broken].some((id) => id.startsWith(`${part}.`))
      ? 'broken'
      : moodOf(pose, part, false)
  const make = (part: 'gate.1' | 'gate.2' | 'presser'): ReturnType<typeof pieceMaker> =>
    pieceMaker(part, 'cams', 'metal', { part, mood: mood(part) })
  const lead = pieceMaker('leading-cam', 'cams', 'metal')
  const gateLevel = (part: 'gate.1' | 'gate.2'): number => buttLevel(-gateEdge(condition, part))
  const back: Course = (behind) =>
    cams.plainTravel * harmonic((behind - condition.dimensions.gateLag) / cams.gate1Length)
  const forward: Course = (behind) =>
    -cams.selectedTravel * harmonic((behind - gate2Start(condition.dimensions)) / cams.gate2Length)
  const aside = condition.carriagePlain ? asideHeight : -0.5
  const spans = camSpansOf(condition.dimensions)
  return [
    ...presser(pose).map(make('presser')),
    ...wall(pose, spans['gate.1'], back, 'back', gateLevel('gate.1')).map(make('gate.1')),
    ...wall(pose, spans['gate.2'], forward, 'front', gateLevel('gate.2')).map(make('gate.2')),
    ...wall(pose, leadingSpan, leading(-cams.selectedTravel), 'back', buttLevel(aside)).map(lead),
    ...wall(pose, leadingSpan, leading(cams.plainTravel), 'front', buttLevel(aside)).map(lead),
  ]
}

/** The carriage: a plate that slides on the bed and on the deck, and the cams under it. */
export const carriage = (pose: Pose): MachinePiece[] => {
  const x = needleAt(pose.frame.x)
  const half = carriageHalf * dimensions.pitch
  const make = pieceMaker('carriage', 'carriage', 'frame', {
    part: 'carriage',
    mood: moodOf(pose, 'carriage', false),
  })
  const between = ([front, back]: readonly [number, number], low: number, high: number): Hull =>
    box([x - half, front, low], [x + half, back, high])
  return [
    make(between([place.front, place.back], place.low, place.high)),
    make(between(place.runner, buttLevel(-2.45), place.low)),
    make(between(place.foot, place.deck, place.low)),
    make(box([x - 14, -20, place.high], [x - 11, -16, place.high + 12], { bottom: { kind: 'joint' } })),
    make(box([x + 11, -20, place.high], [x + 14, -16, place.high + 12], { bottom: { kind: 'joint' } })),
    make(box([x - 14, -20.5, place.high + 12], [x + 14, -15.5, place.high + 16])),
    ...camsOf(pose),
  ]
}
