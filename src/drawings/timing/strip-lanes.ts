import { sinceLetGo } from '../../mechanism/frame.ts'
import { ofStrip, type Strip, toNeedle, toStrip } from '../../mechanism/indices.ts'
import { at } from '../../mechanism/lookup.ts'
import { stripShift } from '../../mechanism/strip.ts'
import { drawByLook, emptyPaths } from '../shared/by-look.ts'
import { hatch } from '../shared/definitions.ts'
import { polyline, ring } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import { letGos } from './compare.ts'
import type { Sample } from './curves.ts'
import { placeX, stripBase } from './layout.ts'
import { inUse, type TimingView } from './view.ts'

type Piece = readonly Sample[]

const pointsOf = (view: TimingView, strip: Strip, piece: Piece): [number, number][] => {
  const base = stripBase(view.layout, strip)
  return piece.map(({ x, mm }) => [placeX(view.layout, x), base - mm * view.layout.perMm])
}

/** A piece of a curve closed along its base line. */
const shut = (view: TimingView, strip: Strip, piece: Piece): string => {
  const [first, last] = [piece[0]?.x ?? 0, piece.at(-1)?.x ?? 0]
  return `${polyline(pointsOf(view, strip, [{ x: first, mm: 0 }, ...piece, { x: last, mm: 0 }]))}Z`
}

const isStuck = (view: TimingView, strip: Strip): boolean => view.frame.condition.stripStuck[strip - 1] !== 0

/** How far amber goes along a curve to each side of the carriage, in needles. */
const reachOfAmber = 3

/** The curves at work now: of every strip that a hole has shifted, the piece around the carriage. */
export const activeShifts = (view: TimingView): string => {
  const { x, stripShifts } = view.frame
  return view.curves
    .filter(({ strip }) => ofStrip(stripShifts, strip) > 0 && !isStuck(view, strip))
    .flatMap(({ strip, risings }) =>
      risings
        .map((piece) => piece.filter((sample) => Math.abs(sample.x - x) <= reachOfAmber))
        .filter((piece) => (piece[0]?.x ?? Infinity) <= x && (piece.at(-1)?.x ?? -Infinity) >= x)
        .map((piece) => polyline(pointsOf(view, strip, piece))),
    )
    .join('')
}

/** The strips' curves, a path a lane: outlined, and filled as far as they have happened. */
export const drawCurves = (toCome: Group, happened: Group, view: TimingView): void => {
  const shapes = view.curves.map(({ strip, risings }) =>
    risings.map((piece) => shut(view, strip, piece)).join(''),
  )
  drawShapes(drawGroup(toCome, 'outlines'), 'path', 'to-come', view.curves, (_, n) => ({
    d: at(shapes, n),
  }))
  drawShapes(drawGroup(happened, 'fills'), 'path', 'happened', view.curves, (_, n) => ({
    d: at(shapes, n),
  }))
  drawShape(happened, 'path', 'unasked', {
    d: view.curves
      .flatMap(({ strip, extra: areas }) => areas.map((area) => `${polyline(pointsOf(view, strip, area))}Z`))
      .join(''),
    fill: hatch(view.prefix, 'broken'),
  })
}

/** What the sound machine's strips would have done and these did not. */
export const drawMissing = (scroll: Group, view: TimingView): void => {
  drawShape(scroll, 'path', 'missing shifts-missing', {
    d: view.curves
      .flatMap(({ strip, lost }) => lost.map((piece) => polyline(pointsOf(view, strip, piece))))
      .join(''),
  })
}

/** Upright marks in each lane where the presser lets go of one of its needles: the moment that counts. */
export const drawLetGos = (scroll: Group, view: TimingView): void => {
  const { layout, frame } = view
  const rise = frame.condition.reach * layout.perMm
  const below = layout.shape === 'wide' ? 5 : 3
  const ticks = view.curves.flatMap(({ strip }) =>
    letGos(strip, view.range)
      .filter((place) => inUse(view, place))
      .map((place) => `M${placeX(layout, place)},${stripBase(layout, strip) + below}v${-below - rise}`),
  )
  drawShape(scroll, 'path', 'let-go', { d: ticks.join('') })
}

const verdicts = ['reached', 'short', 'wrong'] as const

/** What each strip was found at when the presser let go: far enough, not, or otherwise than asked. */
export const drawVerdicts = (scroll: Group, view: TimingView): void => {
  const { layout, frame, machine } = view
  const { condition, drive } = machine
  const size = layout.shape === 'wide' ? 3.1 : 2.4
  const paths = emptyPaths(verdicts)
  for (const { strip } of view.curves)
    for (const place of letGos(strip, view.range)) {
      if (!inUse(view, place) || sinceLetGo(frame.x, toNeedle(place), drive.way) < 0) continue
      const shift = stripShift(condition, drive, toStrip(strip), place)
      const isFar = shift >= condition.reach
      const verdict =
        isFar !== (frame.pass.asked[place] === 'selected') ? 'wrong' : isFar ? 'reached' : 'short'
      const [x, y] = [placeX(layout, place), stripBase(layout, strip) - shift * layout.perMm]
      const half = size + 0.6
      paths[verdict] +=
        verdict === 'wrong'
          ? `M${x - half},${y - half}l${2 * half},${2 * half}M${x - half},${y + half}l${2 * half},${-2 * half}`
          : ring(x, y, size)
    }
  drawByLook(drawGroup(scroll, 'verdicts'), 'dot', 'data-verdict', verdicts, paths)
}
