import { presserAsMade } from '../../mechanism/condition.ts'
import { needleName, sideOfWay } from '../../mechanism/bed.ts'
import { cams, gate2Start } from '../../mechanism/dimensions.ts'
import { sinceLetGo } from '../../mechanism/frame.ts'
import { type Outcome, travelTime } from '../../mechanism/gate.ts'
import { strayHeight } from '../../words/figures/gates.ts'
import { type Needle, ofNeedle, measureOfNeedle } from '../../mechanism/indices.ts'
import { camSpansOf, dipEdge, gateEdge, presserEdge } from '../shared/cams.ts'
import type { Line } from '../shared/linework.ts'
import { boxPath, outline, polyline, px, ring } from '../shared/paths.ts'
import { levelY, reaches } from './layout.ts'
import { type GatesView, hatchOf, isOnItsWay, markOf } from './view.ts'

type Point = [number, number]

const lead = cams.presserFlat + cams.presserRamp

/** Points along a lower edge of the presser, from the beginning of its ramp to its trailing edge. */
const edgePoints = (
  { layout, x }: GatesView,
  edge: readonly { readonly ahead: number; readonly depth: number }[],
): Point[] => edge.map(({ ahead, depth }): Point => [x(-ahead), levelY(layout, -depth)]).reverse()

/** A gate in section, down to its lower edge; `depth` in mm below the rest level. */
const gate = ({ layout, x, frame }: GatesView, id: 'gate.1' | 'gate.2', depth: number): string => {
  const bottom = Math.max(layout.camTop + 4, levelY(layout, -depth))
  const [from, to] = camSpansOf(frame.condition.dimensions)[id]
  return boxPath(x(from), layout.camTop, x(to), bottom)
}

/** The sill that carries the first gate's underside on to the second gate: it keeps down what has passed under. */
const sill = ({ layout, x, frame }: GatesView): string => {
  const bottom = Math.max(layout.camTop + 4, levelY(layout, -gateEdge(frame.condition, 'gate.1')))
  const spans = camSpansOf(frame.condition.dimensions)
  return boxPath(x(spans['gate.1'][1]), Math.max(layout.camTop, bottom - 7), x(spans['gate.2'][0]), bottom)
}

/** The cams in section: presser, first gate, second gate. */
export const sideCams = (view: GatesView): Line[] => {
  const { layout, x, way, broken, frame } = view
  const { condition } = frame
  const isAside = condition.carriagePlain
  const aside = isAside ? ' aside' : ''
  const worn = broken.has(`presser.${sideOfWay(way)}`) && !isAside
  const off = broken.has('gate.1') && !isAside
  const edge = edgePoints(view, presserEdge(condition, way, 20))
  const presser = outline([[x(-lead), layout.camTop], ...edge, [x(0), layout.camTop]])
  return [
    {
      look: `cam-cut${aside}`,
      d: gate(view, 'gate.2', gateEdge(condition, 'gate.2')),
      hatch: 'cut',
      part: 'gate.2',
    },
    {
      look: `cam-cut${aside}${off ? ' broken' : ''}`,
      d: gate(view, 'gate.1', gateEdge(condition, 'gate.1')),
      hatch: off ? 'broken' : 'cut',
      part: 'gate.1',
    },
    { look: 'sill', d: isAside ? '' : sill(view) },
    {
      look: `cam-cut${aside}${worn ? ' broken' : ''}`,
      d: presser,
      hatch: worn ? 'broken' : 'cut',
      part: 'presser',
    },
    { look: 'nominal', d: off ? gate(view, 'gate.1', condition.dimensions.gate1) : '' },
    {
      look: 'nominal',
      d: worn ? polyline(edgePoints(view, dipEdge(presserAsMade(condition, frame.pass.way), 20))) : '',
    },
  ]
}

/** Where on the axis a butt of an outcome meets the gate that turns it. */
const facing = ({ frame }: GatesView, outcome: Outcome, end: number): number =>
  outcome === 'plain'
    ? frame.condition.dimensions.gateLag
    : outcome === 'selected'
      ? gate2Start(frame.condition.dimensions)
      : end

/** A curve of heights behind the presser's edge, closely drawn where it is steep. */
const curve = ({ layout, x }: GatesView, to: number, height: (behind: number) => number): Point[] => {
  const steps = 40
  return Array.from({ length: steps + 1 }, (_, n): Point => {
    const behind = to * (n / steps) ** 2
    return [x(behind), levelY(layout, height(behind))]
  })
}

/** The heights of a free and of a held butt along the axis, each up to the gate that turns it; and of a slow one. */
export const sideWays = (view: GatesView): Line[] => {
  const { layout, sorting, frame, stray, x } = view
  const { condition } = frame
  const { behind, ahead } = reaches(layout)
  const { dip, free, held, canHold, buttReturn } = sorting
  const springing = (b: number, time: number): number => Math.exp(-travelTime(condition, b) / time)
  const freeCurve = curve(view, facing(view, free.outcome, behind), (b) => -dip * springing(b, buttReturn))
  const heldCurve = canHold
    ? curve(view, facing(view, held.outcome, behind), (b) =>
        Math.min(held.height, -dip * springing(b, view.frame.condition.dimensions.buttReturn)),
      )
    : []
  const before: Point[] = [[x(ahead), layout.rest], ...edgePoints(view, dipEdge(dip, 20))]
  const wrong = free.outcome === 'plain' ? '' : ' wrong'
  const size = layout.half * 0.8
  const end = (points: readonly Point[]): string =>
    points.length > 0 ? ring(...(points.at(-1) ?? [0, 0]), size) : ''
  const strayCurve = stray
    ? curve(view, facing(view, stray.outcome, behind), (b) => strayHeight(frame, stray, b))
    : []
  const isStrayWrong = strayIsWrong(view)
  return [
    { look: 'glow-line', d: polyline(heldCurve) },
    { look: 'way', d: polyline(before) },
    { look: `way${wrong}`, d: polyline(freeCurve) },
    { look: 'way held', d: polyline(heldCurve) },
    { look: `way slow${isStrayWrong ? ' wrong' : ''}`, d: polyline(strayCurve) },
    { look: `stop${wrong}`, d: end(freeCurve) },
    { look: `stop held${held.outcome === 'selected' ? '' : ' wrong'}`, d: end(heldCurve) },
    { look: `stop${isStrayWrong ? ' wrong' : ''}`, d: end(strayCurve) },
  ]
}

/** Whether the butt that goes a way of its own comes out otherwise than asked. */
export const strayIsWrong = ({ stray, frame }: GatesView): boolean =>
  stray !== null && stray.outcome !== ofNeedle(frame.pass.asked, stray.needle)

/** A needle's butt from the side, from its top down into the bed. */
const pillar = ({ frame, layout, way, x }: GatesView, index: Needle): string => {
  const middle = x(sinceLetGo(frame.x, index, way))
  const top = levelY(layout, measureOfNeedle(frame.buttHeights, index))
  return `M${px(middle - layout.half)},${layout.bed}V${px(top)}h${2 * layout.half}V${layout.bed}Z`
}

const isTurned = ({ frame, way }: GatesView, index: Needle): boolean =>
  ofNeedle(frame.pass.came, index) === 'plain' &&
  sinceLetGo(frame.x, index, way) > frame.condition.dimensions.gateLag

/** The real butts of the frame: those that the first gate has turned are behind the cams and are drawn faint. */
export const sideButts = (view: GatesView, turned: boolean): Line[] => {
  const { frame, seen } = view
  const chosen = seen.map((index) => (index !== null && isTurned(view, index) === turned ? index : null))
  const glow = chosen
    .map((index) => (index !== null && isOnItsWay(frame, index) ? pillar(view, index) : ''))
    .join('')
  return [
    { look: 'glow', d: glow },
    ...chosen.map((index) => {
      const mark = index === null ? 'gone' : markOf(frame, index)
      const d = index === null || mark === 'gone' ? '' : pillar(view, index)
      return {
        look: `butt-side ${mark}${turned ? ' turned' : ''}`,
        d,
        part: index === null ? '' : `needle.${needleName(index)}`,
        ...hatchOf(mark),
      }
    }),
  ]
}

/** The bed, and the rest line over it. */
export const sideBed = ({ layout }: GatesView): Line[] => [
  {
    look: 'solid',
    d: boxPath(-10, layout.bed, layout.width + 10, layout.bedFoot),
    hatch: 'cut',
  },
  { look: 'rest', d: `M0,${layout.rest}H${layout.width}` },
]
