import { needleName } from '../../mechanism/bed.ts'
import { cams } from '../../mechanism/dimensions.ts'
import { harmonic, sinceLetGo } from '../../mechanism/frame.ts'
import type { Outcome } from '../../mechanism/gate.ts'
import { type Needle, measureOfNeedle } from '../../mechanism/indices.ts'
import { camSpansOf } from '../shared/cams.ts'
import type { Line } from '../shared/linework.ts'
import { boxPath, outline, polyline, px } from '../shared/paths.ts'
import { perMm, reaches } from './layout.ts'
import { type GatesView, hatchOf, isOnItsWay, markOf, travelOf } from './view.ts'

type Point = [number, number]

/** A run of points along the axis, from one place to another, in needles behind the presser's edge. */
const along = (from: number, to: number, steps: number, at: (behind: number) => Point): Point[] =>
  Array.from({ length: steps + 1 }, (_, n) => at(from + ((to - from) * n) / steps))

/** How far a needle is forward while the leading cams bring it back to the line, in mm, from where it was. */
const gathered = (setOut: number, behind: number): number =>
  setOut * harmonic((-behind - cams.presserFlat - cams.presserRamp) / cams.gather)

/**
 * A cam's wall from above. Its face is half a butt beside the way of the butts' middles, as far along as a square
 * butt's corner reaches, so that butts slide along it and never cut it. `side` 1: the wall lies in front of the butts.
 */
const wall = (
  { layout, x }: GatesView,
  [from, to]: readonly [number, number],
  side: 1 | -1,
  way: (behind: number) => number,
  thick: (share: number) => number,
): string => {
  const corner = layout.half / layout.pitch
  const face = (behind: number): number =>
    layout.line + way(behind - corner) * perMm(layout) + side * layout.half
  const steps = 16
  return outline([
    ...along(from, to, steps, (behind) => [x(behind), face(behind)]),
    ...along(to, from, steps, (behind) => [
      x(behind),
      face(behind) + side * thick((behind - from) / (to - from)),
    ]),
  ])
}

/** The carriage's plate, the leading cams, the presser's footprint and the two gates, from above. */
export const planCams = (view: GatesView): Line[] => {
  const { layout, x, broken, frame } = view
  const aside = frame.condition.carriagePlain ? ' aside' : ''
  const { bodyTop, bodyFoot, line } = layout
  const { behind, ahead } = reaches(layout)
  const [near, far] = [x(ahead - 1), x(Math.min(behind - 0.1, 10.4))]
  const grow = (share: number): number => 3 + share * layout.wall
  const lead = cams.presserFlat + cams.presserRamp
  const span: readonly [number, number] = [-lead - cams.gather - 0.6, -lead]
  const shrink = (share: number): number => 3 + (1 - share) * layout.wall * 0.6
  const foot = layout.half * 2
  const [left, right] = [x(0), x(-lead)]
  return [
    {
      look: 'plate-outline',
      d: boxPath(near, bodyTop, far, bodyFoot),
      part: 'carriage',
    },
    {
      look: `footprint${aside}`,
      d: boxPath(left, line - foot, right, line + foot),
      part: 'presser',
    },
    { look: 'wall', d: wall(view, span, 1, (b) => gathered(cams.selectedTravel, b), shrink) },
    { look: 'wall', d: wall(view, span, -1, (b) => gathered(-cams.plainTravel, b), shrink) },
    {
      look: `wall${aside}${broken.has('gate.1') ? ' broken' : ''}`,
      d: wall(
        view,
        camSpansOf(view.frame.condition.dimensions)['gate.1'],
        1,
        (b) => travelOf(view.frame.condition.dimensions, 'plain', b),
        grow,
      ),
      part: 'gate.1',
    },
    {
      look: `wall${aside}`,
      d: wall(
        view,
        camSpansOf(view.frame.condition.dimensions)['gate.2'],
        -1,
        (b) => travelOf(view.frame.condition.dimensions, 'selected', b),
        grow,
      ),
      part: 'gate.2',
    },
  ]
}

/** The way of an outcome from above, between two places on the axis. */
const lane = (
  { layout, x, frame }: GatesView,
  outcome: Outcome,
  from: number,
  to: number,
  aside: number,
): string =>
  to <= from
    ? ''
    : polyline(
        along(from, to, Math.max(2, Math.ceil((to - from) * 4)), (behind) => [
          x(behind),
          layout.line + travelOf(frame.condition.dimensions, outcome, behind) * perMm(layout) + aside,
        ]),
      )

/** The two ways of the butts: that of a free one, and that of a held one with the push on it; dashed under a gate. */
export const planWays = (view: GatesView): Line[] => {
  const { sorting, layout } = view
  const { free, held, canHold } = sorting
  const { behind, ahead } = reaches(layout)
  const first = view.frame.condition.dimensions.gateLag
  const end = first + cams.gate1Length
  const aside = layout.half * 0.35
  const freeGoesRight = free.outcome === 'plain'
  const heldGoesRight = canHold && held.outcome === 'selected'
  const heldLane = (from: number, to: number): string => lane(view, held.outcome, from, to, aside)
  return [
    { look: 'glow-line', d: heldGoesRight ? heldLane(0, behind) : canHold ? heldLane(0, first) : '' },
    { look: 'way', d: lane(view, 'plain', ahead, freeGoesRight ? behind : first, -aside) },
    {
      look: 'way wrong',
      d: freeGoesRight ? '' : lane(view, free.outcome, first, behind, -aside),
    },
    { look: 'way held', d: canHold ? heldLane(0, first) + (heldGoesRight ? heldLane(end, behind) : '') : '' },
    { look: 'way held hidden', d: heldGoesRight ? heldLane(first, end) : '' },
    { look: 'way wrong', d: canHold && !heldGoesRight ? heldLane(first, behind) : '' },
    { look: 'way astray', d: freeGoesRight ? '' : lane(view, 'plain', first, behind, 0) },
    { look: 'way astray', d: heldGoesRight ? '' : lane(view, 'selected', first, behind, aside) },
  ]
}

/** Centre of a needle's butt from above. */
const planPoint = ({ frame, layout, way, x }: GatesView, index: Needle): Point => [
  x(sinceLetGo(frame.x, index, way)),
  layout.line + measureOfNeedle(frame.needleTravels, index) * perMm(layout),
]

const square = ([x, y]: Point, half: number): string =>
  `M${px(x - half)},${px(y - half)}h${2 * half}v${2 * half}h${-2 * half}Z`

/** The tricks in which the needles slide, so that a butt can only move across the bed. */
export const planTricks = (view: GatesView): Line => {
  const { layout } = view
  const d = view.seen
    .map((index) =>
      index === null ? '' : `M${px(planPoint(view, index)[0])},${layout.bodyTop + 4}V${layout.bodyFoot - 4}`,
    )
    .join('')
  return { look: 'tricks', d }
}

/** The real butts of the frame from above, those with the push on them on amber. */
export const planButts = (view: GatesView): Line[] => {
  const { frame, layout, seen } = view
  const half = layout.half
  const glow = seen
    .map((index) => (index !== null && isOnItsWay(frame, index) ? square(planPoint(view, index), half) : ''))
    .join('')
  return [
    { look: 'glow', d: glow },
    ...seen.map((index) => {
      if (index === null) return { look: 'butt-top out', d: '' }
      const mark = markOf(frame, index)
      return {
        look: `butt-top ${mark}`,
        d: square(planPoint(view, index), half),
        part: `needle.${needleName(index)}`,
        ...hatchOf(mark),
      }
    }),
  ]
}
