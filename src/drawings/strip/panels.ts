import { dimensions } from '../../mechanism/dimensions.ts'
import { sinceLetGo } from '../../mechanism/frame.ts'
import { type Needle, markOfNeedle, measureOfNeedle } from '../../mechanism/indices.ts'
import { at as entryAt, lastOf } from '../../mechanism/lookup.ts'
import { oneWords, otherWords } from '../../words/figures/strip.ts'
import { millimetres } from '../../words/lists.ts'
import { presserEdge } from '../shared/cams.ts'
import type { Box } from '../shared/definitions.ts'
import { catchOf, holdingOf, needlePart } from '../shared/detail/needle-state.ts'
import {
  buttOutline,
  type ButtPosition,
  catchOutline,
  shape,
  stumpOutline,
  tipAt,
} from '../shared/detail/profile.ts'
import type { Label } from '../shared/labels.ts'
import type { Line } from '../shared/linework.ts'
import { boxPath, dimensionLine, outline, polyline } from '../shared/paths.ts'
import { lift } from './layout.ts'
import { stripMark, type StripView } from './view.ts'

/** The two details: of the butt under the presser, and of one of the others. */
const detailsOf = (view: StripView): { letter: string; left: number; index: Needle | null }[] => [
  { letter: 'A', left: view.layout.panel.lefts[0], index: view.large.one },
  { letter: 'B', left: view.layout.panel.lefts[1], index: view.large.other },
]

const placeIn = ({ layout }: StripView, left: number): ButtPosition => ({
  x: left + layout.panel.needle,
  rest: layout.panel.top + layout.panel.rest,
  along: layout.panel.along,
  up: layout.panel.along * lift,
})

/** How far strip, bed and presser run on beyond a detail's edges, where they are cut off, in pixels. */
const beyond = 12

/** A box across the picture of a detail, between two heights in mm. */
const across = (view: StripView, left: number, from: number, to: number): string => {
  const { panel } = view.layout
  const place = placeIn(view, left)
  const [near, far] = [left + panel.picture - beyond, left + panel.width + beyond]
  return boxPath(near, place.rest - to * place.up, far, place.rest - from * place.up)
}

/** The presser over a needle in a detail, cut off where the picture ends. */
const presserOver = (view: StripView, left: number, index: Needle): string => {
  const { frame, layout } = view
  const since = sinceLetGo(frame.x, index, frame.pass.way)
  const { panel } = layout
  if (since > 1.5 || since < -4) return ''
  const place = placeIn(view, left)
  const [least, most] = [left + panel.picture - beyond, left + panel.width + beyond]
  const x = (ahead: number): number =>
    Math.min(
      most,
      Math.max(least, place.x + frame.pass.way * (since + ahead) * dimensions.pitch * place.along),
    )
  const top = place.rest - 0.7 * place.up
  const lower = presserEdge(frame.condition, frame.pass.way, 10).map(({ ahead, depth }): [number, number] => [
    x(ahead),
    place.rest + depth * place.up,
  ])
  const [near, far] = [entryAt(lower, 0)[0], lastOf(lower)[0]]
  return near === far ? '' : outline([[near, top], ...lower, [far, top]])
}

/** The amber under the moving parts of a detail. */
const glowIn = (view: StripView, left: number, index: Needle): string => {
  const { frame, pushed } = view
  const place = placeIn(view, left)
  const isUnder = index === view.under
  const strip = pushed ? across(view, left, shape.stripFoot, shape.stripTop) : ''
  const finger =
    pushed && isUnder && !markOfNeedle(frame.condition.catchBroken, index)
      ? catchOutline(place, catchOf(frame, index))
      : ''
  const butt =
    holdingOf(frame, index) === 'held' ? buttOutline(place, measureOfNeedle(frame.buttHeights, index), 0) : ''
  return strip + finger + butt
}

const detailLines = (view: StripView, left: number, index: Needle): Line[] => {
  const { frame } = view
  const { condition } = frame
  const place = placeIn(view, left)
  const state = catchOf(frame, index)
  const gone = markOfNeedle(condition.needleGone, index) === 1
  const lean = markOfNeedle(condition.needleBent, index) ? shape.lean : 0
  const stump = markOfNeedle(condition.catchBroken, index) === 1
  const holding = holdingOf(frame, index)
  const wrong = lean > 0 || holding === 'missed' || holding === 'extra'
  const mark = stump ? ' broken' : stripMark(view)
  const butt = buttOutline(place, measureOfNeedle(frame.buttHeights, index), lean)
  return [
    { look: 'channel', d: across(view, left, shape.channel, shape.bed) },
    { look: 'solid', d: across(view, left, shape.channel - 0.8, shape.channel), hatch: 'cut' },
    {
      look: 'rest',
      d: polyline([
        [left + view.layout.panel.picture, place.rest],
        [left + view.layout.panel.width, place.rest],
      ]),
    },
    { look: 'glow', d: glowIn(view, left, index) },
    {
      look: `long-bar${stripMark(view)}`,
      d: across(view, left, shape.stripFoot, shape.stripTop),
      part: `strip.${view.strip}`,
      ...(view.isBroken ? { hatch: 'broken' as const } : {}),
    },
    {
      look: `large-catch${mark}`,
      d: stump ? stumpOutline(place, state) : catchOutline(place, state),
      ...(mark === ' broken' ? { hatch: 'broken' as const } : {}),
    },
    {
      look: gone ? 'gone' : `plate ${holding}`,
      d: butt,
      part: needlePart(index),
      ...(wrong && !gone ? { hatch: 'broken' as const } : {}),
    },
    {
      look: `presser-body${condition.carriagePlain ? ' aside' : ''}`,
      d: presserOver(view, left, index),
    },
  ]
}

/** The moving parts of each detail, and the window in which they are seen. */
export const panelPictures = (view: StripView): { name: string; window: Box; lines: Line[] }[] =>
  detailsOf(view).map(({ letter, left, index }) => {
    const { panel } = view.layout
    const name = `detail-${letter.toLowerCase()}`
    const width = panel.width - panel.picture
    return {
      name,
      window: { x: left + panel.picture, y: panel.top, width, height: panel.height },
      lines: index === null ? [] : detailLines(view, left, index),
    }
  })

/** Frames of the details, and in each the dimension lines of reach and shift. */
export const panelLines = (view: StripView): Line[] => {
  const { layout, frame } = view
  const { panel } = layout
  return detailsOf(view).flatMap(({ left, index }) => {
    const frameLine = {
      look: 'detail-frame',
      d: `M${left},${panel.top}h${panel.width}v${panel.height}h${-panel.width}Z`,
    }
    if (index === null || layout.shape === 'narrow') return [frameLine]
    const place = placeIn(view, left)
    const { reach, shift } = catchOf(frame, index)
    const x = (mm: number): number => place.x + mm * place.along
    const [still, now, edge] = [x(tipAt(reach, 0)), x(tipAt(reach, shift)), x(shape.spur)]
    const under = place.rest - catchOf(frame, index).under * place.up
    const [first, second] = [panel.top + 15, panel.top + 33]
    return [
      frameLine,
      {
        look: 'extension',
        d:
          polyline([
            [still, first - 6],
            [still, under],
          ]) +
          polyline([
            [edge, first - 6],
            [edge, under],
          ]),
      },
      {
        look: 'extension',
        d:
          shift > 0.01
            ? polyline([
                [now, second - 6],
                [now, under],
              ])
            : '',
      },
      { look: 'dimension', d: dimensionLine(still, first, edge, first) },
      { look: 'dimension', d: dimensionLine(still, second, now, second) },
    ]
  })
}

/** The words of the details. */
export const panelLabels = (view: StripView): Label[] => {
  const { layout, frame, strip, shift } = view
  const { panel } = layout
  const isWide = layout.shape === 'wide'
  const { reach } = frame.condition
  const moved = shift > 0 ? `shift ${millimetres(shift)}` : 'no shift'
  const mark = view.isBroken ? ' wrong' : shift >= reach ? ' selected' : ''
  return detailsOf(view).flatMap(({ letter, left, index }, n) => {
    const words =
      index === null
        ? ['no other needle in use']
        : n === 0
          ? oneWords(frame, strip, index)
          : otherWords(frame, strip, index)
    const lines = isWide
      ? words
      : [...words.slice(0, 2), n === 0 ? `${moved}, reach ${millimetres(reach)}` : moved]
    const tip = left + panel.needle + tipAt(reach, 0) * panel.along
    return [
      { look: 'strong', x: left + 10, y: panel.top + panel.words.y, text: letter },
      ...lines.map((text, line) => ({
        look: line === 0 ? 'title' : line === 2 && !isWide ? mark.trim() : '',
        x: left + (line === 0 || isWide ? panel.words.x : 10),
        y: panel.top + panel.words.y + line * panel.words.step,
        text,
      })),
      ...(isWide && index !== null
        ? [
            { look: 'end', x: tip - 8, y: panel.top + 19, text: `reach ${millimetres(reach)}` },
            { look: `end${mark}`, x: tip - 16, y: panel.top + 37, text: moved },
          ]
        : []),
    ]
  })
}

/** Rings round the two butts that are drawn large, with their letters. */
export const ringsOf = (view: StripView): { letter: string; index: number }[] =>
  detailsOf(view).flatMap(({ letter, index }) => (index === null ? [] : [{ letter, index }]))
