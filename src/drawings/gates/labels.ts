import { needleName } from '../../mechanism/bed.ts'
import { cams, dimensions } from '../../mechanism/dimensions.ts'
import { sinceLetGo } from '../../mechanism/frame.ts'
import {
  type ButtFate,
  freeWords,
  gapWords,
  heldWords,
  strayWords,
  timeWords,
} from '../../words/figures/gates.ts'
import { down } from '../../words/figures/hold.ts'
import { millimetres, withUnit } from '../../words/lists.ts'
import type { Balloon } from '../shared/balloons.ts'
import { camMiddle, leadingSpan } from '../shared/cams.ts'
import type { Label } from '../shared/labels.ts'
import type { Line } from '../shared/linework.ts'
import { polyline } from '../shared/paths.ts'
import { dimensionLabels } from './dimensions.ts'
import { lift, perMm, reaches } from './layout.ts'
import { strayIsWrong } from './side.ts'
import { type GatesView, markOf } from './view.ts'

const camLabels = (view: GatesView): Label[] => {
  const { layout, sorting, x, broken } = view
  const isWide = layout.shape === 'wide'
  const edgeWords = (words: string): string => (sorting.isAside ? 'stands aside' : words)
  const off = sorting.gate1 - view.frame.condition.dimensions.gate1
  const wrongEdge = broken.has('gate.1')
    ? `${millimetres(Math.abs(off))} too ${off > 0 ? 'low' : 'high'}`
    : `edge ${down(-sorting.gate1)}`
  const named = [
    {
      at: camMiddle(view.frame.condition.dimensions, 'presser'),
      name: 'presser',
      more: edgeWords(`dips ${millimetres(sorting.dip)}`),
      look: '',
    },
    {
      at: camMiddle(view.frame.condition.dimensions, 'gate.1'),
      name: 'first gate',
      more: edgeWords(wrongEdge),
      look: broken.has('gate.1') ? ' wrong' : '',
    },
    {
      at: camMiddle(view.frame.condition.dimensions, 'gate.2'),
      name: 'second gate',
      more: edgeWords(`edge ${down(-view.frame.condition.dimensions.gate2)}`),
      look: '',
    },
  ]
  const y = layout.camTop - (isWide ? 26 : 6)
  return named.flatMap(({ at, name, more, look }) => [
    { look: 'middle strong over', x: x(at) + (isWide ? 10 : 0), y, text: name },
    ...(isWide ? [{ look: `middle over${look}`, x: x(at), y: y + 18, text: more }] : []),
  ])
}

const nameLabels = (view: GatesView): Label[] => {
  const { layout, frame, seen, x, way } = view
  const step = layout.shape === 'wide' ? 1 : 2
  return seen.flatMap((index) => {
    if (index === null || index % step !== 0) return []
    const place = x(sinceLetGo(frame.x, index, way))
    if (place < 16 || place > layout.width - 16) return []
    const mark = markOf(frame, index)
    const wrong = mark === 'missed' || mark === 'extra' || mark === 'gone' ? ' wrong' : ''
    return [
      {
        look: `middle over${wrong || (mark === 'held' ? ' selected' : '')}`,
        x: place,
        y: layout.names,
        text: needleName(index),
      },
    ]
  })
}

const laneLabels = (view: GatesView): Label[] => {
  const { layout, x, way, sorting } = view
  const { behind } = reaches(layout)
  const isWide = layout.shape === 'wide'
  const look = way === 1 ? '' : 'end '
  const place = x(behind) + way * (isWide ? 22 : 6)
  const up = isWide ? 9 : 6
  return [
    {
      look: `${look}strong`,
      x: place,
      y: layout.line - cams.plainTravel * perMm(layout) - layout.half - up,
      text: isWide ? `plain: ${millimetres(cams.plainTravel)} back` : 'plain',
    },
    {
      look: `${look}${sorting.held.outcome === 'selected' && sorting.canHold ? 'selected' : 'wrong'}`,
      x: place,
      y: layout.line + cams.selectedTravel * perMm(layout) + layout.half + up + 9,
      text: isWide ? `selected: ${millimetres(cams.selectedTravel)} forward` : 'selected',
    },
  ]
}

/** The lines of words below both views. */
const wordLines = (view: GatesView): Label[] => {
  const { frame, sorting, stray, layout } = view
  const isWide = layout.shape === 'wide'
  const { free, held, canHold } = sorting
  const fates: readonly (readonly [string, ButtFate])[] = [
    [free.outcome === 'plain' ? 'strong' : 'wrong', freeWords(sorting)],
    [canHold && held.outcome === 'selected' ? 'selected' : 'wrong', heldWords(sorting)],
    ...(stray === null ? [] : [[strayIsWrong(view) ? 'wrong' : 'strong', strayWords(stray)] as const]),
  ]
  const rows = isWide
    ? fates.map(([look, words]) => ({ look, text: words.join('; ') }))
    : fates.flatMap(([look, words]) => words.map((text) => ({ look, text })))
  const edges = `edges ${down(-sorting.gate1)} and ${down(-view.frame.condition.dimensions.gate2)}`
  const last = isWide ? [] : [{ look: '', text: edges }]
  return [
    ...rows,
    ...last,
    {
      look: '',
      text: isWide
        ? timeWords(frame, sorting)
        : `${gapWords(sorting)} to the first gate at ${withUnit(frame.condition.speed, 'mm/s')}`,
    },
  ].map(({ look, text }, n) => ({ look, x: isWide ? 62 : 4, y: layout.words + n * layout.wordStep, text }))
}

/** Samples of the lines that the words below speak of, in the same order. */
export const keyLines = (view: GatesView): Line[] => {
  const { layout, sorting, stray } = view
  if (layout.shape === 'narrow') return []
  const sample = (n: number): string => {
    const y = layout.words + n * layout.wordStep - 4.5
    return polyline([
      [16, y],
      [50, y],
    ])
  }
  return [
    { look: `way${sorting.free.outcome === 'plain' ? '' : ' wrong'}`, d: sample(0) },
    { look: 'glow-line', d: sorting.canHold ? sample(1) : '' },
    { look: sorting.canHold ? 'way held' : 'way wrong', d: sample(1) },
    { look: `way slow${strayIsWrong(view) ? ' wrong' : ''}`, d: stray === null ? '' : sample(2) },
  ]
}

/** Every label of the figure. */
export const labelsOf = (view: GatesView): Label[] => {
  const { layout, way, x } = view
  const isWide = layout.shape === 'wide'
  const heading = isWide
    ? [
        { look: 'strong', x: 14, y: 20, text: 'from above' },
        { look: 'strong', x: 14, y: 276, text: 'from the side' },
        { look: '', x: 124, y: 276, text: `heights ${lift} times as large as lengths` },
        { look: 'middle over', x: x(leadingSpan[0] + 0.2), y: layout.line + 48, text: 'leading cams' },
        {
          look: 'middle strong',
          x: x(-1.25),
          y: 20,
          text: way === 1 ? 'carriage moves right →' : '← carriage moves left',
        },
        { look: '', x: layout.width - 160, y: 20, text: `needles, ${millimetres(dimensions.pitch)} apart` },
      ]
    : [{ look: 'end', x: layout.width - 2, y: layout.height - 6, text: `heights × ${lift}` }]
  return [
    ...heading,
    ...nameLabels(view),
    ...laneLabels(view),
    ...camLabels(view),
    ...(isWide ? dimensionLabels(view) : []),
    ...wordLines(view),
  ]
}

/** The balloons beside the cams' names, and that of the needles. */
export const balloonsOf = (view: GatesView): Balloon[] => {
  const { layout, x } = view
  if (layout.shape === 'narrow') return []
  const y = layout.camTop - 30.5
  return [
    { number: 6, x: x(camMiddle(view.frame.condition.dimensions, 'presser')) - 32, y },
    { number: 7, x: x(camMiddle(view.frame.condition.dimensions, 'gate.1')) - 40, y },
    { number: 8, x: x(camMiddle(view.frame.condition.dimensions, 'gate.2')) - 50, y },
    { number: 9, x: layout.width - 176, y: 15.5 },
  ]
}
