import type { Way } from '../../mechanism/bed.ts'
import { sinceLetGo } from '../../mechanism/frame.ts'
import { ofStrip, type Strip, toStrip, ofNeedle, measureOfNeedle } from '../../mechanism/indices.ts'
import { at, at as entryAt, lastOf } from '../../mechanism/lookup.ts'
import { stripShift } from '../../mechanism/strip.ts'
import { drawByLook, emptyPaths } from '../shared/by-look.ts'
import { hatch } from '../shared/definitions.ts'
import { polyline, px, ring } from '../shared/paths.ts'
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
  const [first, last] = [entryAt(piece, 0).x, lastOf(piece).x]
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

/** A cross, for what came out wrong. */
const cross = (x: number, y: number, half: number): string =>
  `M${px(x - half)},${px(y - half)}l${2 * half},${2 * half}M${px(x - half)},${px(y + half)}l${2 * half},${-2 * half}`

/** Height of the shift below which a catch lets go, above a lane's base line in pixels. */
const letGoRise = ({ layout, frame }: TimingView): number => frame.condition.dimensions.letGo * layout.perMm

/**
 * In each lane an upright mark where the presser lets go of one of its needles, as high as the reach, and from there on
 * to the first gate a line as high as the shift at which a catch lets go: a needle is selected where the strip's curve is
 * above the mark, and stays above the line.
 */
export const drawLetGos = (scroll: Group, view: TimingView): void => {
  const { layout, frame } = view
  const rise = frame.condition.reach * layout.perMm
  const hold = letGoRise(view)
  const below = layout.shape === 'wide' ? 5 : 3
  const places = view.curves.flatMap(({ strip }) =>
    letGos(strip, view.range, frame.condition)
      .filter((place) => inUse(view, place))
      .map((place) => ({ place, base: stripBase(layout, strip) })),
  )
  const marks = places.map(({ place, base }) => `M${placeX(layout, place)},${base + below}v${-below - rise}`)
  const spans = places.map(({ place, base }) => {
    const [from, to] = [place, place + frame.pass.way * frame.condition.dimensions.gateLag].map((x) =>
      px(placeX(layout, x)),
    )
    return `M${from},${px(base - hold)}H${to}M${to},${px(base - hold - below)}v${2 * below}`
  })
  drawShape(scroll, 'path', 'let-go-ground', { d: [...marks, ...spans].join('') })
  drawShape(scroll, 'path', 'let-go', { d: marks.join('') })
  drawShape(scroll, 'path', 'hold-span', { d: spans.join('') })
}

/** Where a strip falls below the shift at which a catch lets go, in needles, on the falling side of a piece of its curve. */
const fallsAt = (piece: Piece, way: Way, letGo: number): number | null => {
  const inTime = way === 1 ? piece : [...piece].reverse()
  const after = inTime.findLastIndex(({ mm }) => mm >= letGo) + 1
  const [before, next] = [inTime[after - 1], inTime[after]]
  if (!before || !next) return null
  const share = (before.mm - letGo) / (before.mm - next.mm)
  return before.x + share * (next.x - before.x)
}

/** Marks where each strip falls so far back that its catches let go. */
export const drawFalls = (scroll: Group, view: TimingView): void => {
  const { layout, frame } = view
  const half = layout.shape === 'wide' ? 3.4 : 2.6
  const rise = letGoRise(view)
  drawShape(scroll, 'path', 'falls', {
    d: view.curves
      .flatMap(({ strip, risings }) =>
        risings.map((piece) => ({
          x: fallsAt(piece, frame.pass.way, frame.condition.dimensions.letGo),
          y: stripBase(layout, strip) - rise,
        })),
      )
      .map(({ x, y }) =>
        x === null
          ? ''
          : `M${px(placeX(layout, x) - half)},${px(y - half)}h${2 * half}l${-half},${2 * half}Z`,
      )
      .join(''),
  })
}

const verdicts = ['reached', 'short', 'wrong'] as const

/**
 * What each strip was found at when the presser let go: far enough, not, or otherwise than asked; and where its catch let a
 * butt go too early, which is marked there.
 */
export const drawVerdicts = (scroll: Group, view: TimingView): void => {
  const { layout, frame, machine } = view
  const { condition, drive } = machine
  const size = layout.shape === 'wide' ? 3.1 : 2.4
  const paths = emptyPaths(verdicts)
  for (const { strip } of view.curves)
    for (const place of letGos(strip, view.range, condition)) {
      if (!inUse(view, place) || sinceLetGo(frame.x, place, drive.way) < 0) continue
      const shift = stripShift(condition, drive, toStrip(strip), place)
      const isFar = shift >= condition.reach
      const isAsked = ofNeedle(frame.pass.asked, place) === 'selected'
      const verdict = isFar !== isAsked ? 'wrong' : isFar ? 'reached' : 'short'
      const [x, y] = [placeX(layout, place), stripBase(layout, strip) - shift * layout.perMm]
      const half = size + 0.6
      const keptFor = measureOfNeedle(frame.pass.keptFor, place)
      const isLetGo = sinceLetGo(frame.x, place, drive.way) >= keptFor
      if (isFar && isAsked && isLetGo && ofNeedle(frame.pass.came, place) !== 'selected')
        paths.wrong += cross(
          placeX(layout, place + drive.way * keptFor),
          stripBase(layout, strip) - letGoRise(view),
          half,
        )
      paths[verdict] += verdict === 'wrong' ? cross(x, y, half) : ring(x, y, size)
    }
  drawByLook(drawGroup(scroll, 'verdicts'), 'dot', 'data-verdict', verdicts, paths)
}
