import { needleName, sideOfWay } from '../../mechanism/bed.ts'
import { cams, type Dimensions, dimensions, gate2Start, sortedAfter } from '../../mechanism/dimensions.ts'
import { needleUnderPresser } from '../../mechanism/frame.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import { drawBalloons } from '../shared/balloons.ts'
import { hatch } from '../shared/definitions.ts'
import { drawTexts, type Label } from '../shared/labels.ts'
import { boxPath, px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import { stripBase, windowX } from './layout.ts'
import type { TimingView } from './view.ts'

const spansOf = (dimensions: Dimensions) => {
  const { gateLag } = dimensions
  return [
    { number: 6, id: 'presser', name: 'presser', from: -cams.presserFlat - cams.presserRamp, to: 0 },
    {
      number: 7,
      id: 'gate.1',
      name: 'first gate',
      from: gateLag,
      to: gateLag + cams.gate1Length,
    },
    {
      number: 8,
      id: 'gate.2',
      name: 'second gate',
      from: gate2Start(dimensions),
      to: sortedAfter(dimensions),
    },
  ] as const
}

const { turnMark } = dimensions

/** Half the room that a cam's name needs, in pixels. */
const halfName = 36

/** Place in the picture of a point `behind` needles behind the presser's trailing edge. */
const behindX = (view: TimingView, behind: number): number =>
  windowX(view.layout, view.from, view.frame.x - view.frame.pass.way * behind)

const isBroken = (view: TimingView, id: string): boolean =>
  view.broken.has(id === 'presser' ? `presser.${sideOfWay(view.frame.pass.way)}` : id)

/** The carriage's cams along the chart's axis: a needle's outcome is settled only when it has passed its gate. */
export const drawCams = (root: Group, view: TimingView, clip: string): void => {
  const { cams } = view.layout
  const spans = cams ? spansOf(view.frame.condition.dimensions) : []
  const { top, height } = cams ?? { top: 0, height: 0 }
  const bottom = top + height
  const group = drawGroup(root, 'cams', { 'clip-path': clip })
  drawShapes(drawGroup(group, 'cam-bars'), 'path', 'cam-bar', spans, ({ from, to, id }) => {
    const [near, far] = [behindX(view, from), behindX(view, to)]
    return {
      d: boxPath(near, top, far, bottom),
      'data-part': id,
      'data-broken': isBroken(view, id) ? 'broken' : '',
      fill: hatch(view.prefix, isBroken(view, id) ? 'broken' : 'cut'),
    }
  })
  const middle = ({ from, to }: ReturnType<typeof spansOf>[number]): number => behindX(view, (from + to) / 2)
  const left = view.layout.left - view.layout.pitch / 2
  const right = left + view.layout.needles * view.layout.pitch
  const shown = spans.filter((span) => middle(span) > left + halfName && middle(span) < right - halfName)
  drawTexts(
    group,
    'cam-names',
    shown.map((span) => ({
      text: span.name,
      x: middle(span),
      y: bottom + 13,
    })),
  )
  drawBalloons(
    group,
    shown.map((span) => ({
      number: span.number,
      x: middle(span),
      y: bottom + 28,
    })),
  )
}

/** How near, in needles, the presser's edge is to a needle that it lets go of at this moment. */
const atOnce = 0.25

/** What the presser is doing, in a few words. */
const words = ({ frame }: TimingView): string => {
  const { first, last } = frame.condition.bed
  const { way } = frame.pass
  const nearest = needleUnderPresser(frame.condition, frame.x)
  if (nearest !== null && Math.abs(nearest - frame.x) <= atOnce)
    return `presser lets go of ${needleName(nearest)}`
  const next = way === 1 ? Math.ceil(frame.x) : Math.floor(frame.x)
  if (next >= first && next <= last) return `presser goes on to ${needleName(toNeedle(next))}`
  const isAhead = way === 1 ? frame.x < first : frame.x > last
  return isAhead ? 'presser before the first needle' : 'presser past the last needle'
}

/** Half the length in pixels that the cursor's words may take. */
const halfWords = 96

/** The cursor: a line through all lanes where the presser lets go, with its way and what it says. */
export const drawCursor = (root: Group, view: TimingView): void => {
  const { layout, frame } = view
  const x = windowX(layout, view.from, frame.x)
  const group = drawGroup(root, 'cursor')
  const top = layout.numbers + 4
  const bottom = layout.cursor - 13
  drawShape(group, 'path', 'cursor-line', { d: `M${px(x)},${top}V${bottom}` })
  const way = frame.pass.way
  drawShape(group, 'path', 'cursor-head', { d: `M${px(x)},${bottom - 9}l${way * 9},4.5l${-way * 9},4.5Z` })
  const place = Math.min(layout.width - halfWords, Math.max(halfWords, x))
  const label: Label = { text: words(view), x: place, y: layout.cursor, look: 'cursor' }
  drawTexts(group, 'cursor-words', [label])
}

/** How near, in needles, the cursor comes to a turn mark before it would cross the mark's name. */
const nearMark = 4

/** The turn marks at both ends of the pass, where they are in the window. */
export const drawMarks = (scroll: Group, view: TimingView): void => {
  const { layout, frame } = view
  const { first, last } = frame.condition.bed
  const marks = [first - turnMark, last + turnMark]
  drawShape(scroll, 'path', 'turn-mark', {
    d: marks.map((mark) => `M${mark * layout.pitch},${layout.numbers + 6}V${layout.bed}`).join(''),
  })
  const names = marks.map((mark, n): Label => {
    const side = n === 0 ? 1 : -1
    const isFree = Math.abs(frame.x - mark) > nearMark
    return {
      text: isFree ? 'turn mark' : '',
      x: mark * layout.pitch + side * 5,
      y: layout.bed - 4,
      look: side === 1 ? 'start' : 'end',
    }
  })
  drawTexts(scroll, 'mark-names', layout.shape === 'wide' ? names : [])
}

/** The lanes' base lines, their reach, and the beginning of each repeat of the card. */
export const drawGrid = (root: Group, view: TimingView): void => {
  const { layout, frame } = view
  const left = layout.left - layout.pitch / 2
  const right = layout.left + (layout.needles - 0.5) * layout.pitch
  const bases = view.curves.map(({ strip }) => stripBase(layout, strip))
  if (layout.pushes) bases.push(layout.pushes.base)
  drawShape(root, 'path', 'base-line', {
    d: [...bases, layout.bed].map((y) => `M${px(left)},${px(y)}H${px(right)}`).join(''),
  })
  const rise = frame.condition.reach * layout.perMm
  drawShape(root, 'path', 'reach-line', {
    d: view.curves
      .map(({ strip }) => `M${px(left)},${px(stripBase(layout, strip) - rise)}H${px(right)}`)
      .join(''),
  })
}
