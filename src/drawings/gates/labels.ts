import { needleName } from '../../mechanism/bed.ts'
import { cams, dimensions } from '../../mechanism/dimensions.ts'
import { sinceLetGo } from '../../mechanism/frame.ts'
import { type Fate, freeWords, gapWords, heldWords, slowWords, timeWords } from '../../words/figures/gates.ts'
import { down } from '../../words/figures/hold.ts'
import { millimetres } from '../../words/lists.ts'
import type { Balloon } from '../shared/drafting.ts'
import { polyline } from '../shared/svg.ts'
import type { Ink, Lettering } from '../shared/detail/ink.ts'
import { dimensionLabels, middles } from './dimensions.ts'
import { lift, perMm, reaches } from './layout.ts'
import { slowIsWrong } from './side.ts'
import { markOf, type View } from './view.ts'

const camLabels = (view: View): Lettering[] => {
  const { layout, sorting, x, broken } = view
  const isWide = layout.name === 'wide'
  const off = sorting.gate1 - dimensions.gate1
  const wrongEdge = broken.has('gate.1')
    ? `${millimetres(Math.abs(off))} too ${off > 0 ? 'low' : 'high'}`
    : `edge ${down(-sorting.gate1)}`
  const named = [
    { at: middles.presser, name: 'presser', more: `dips ${millimetres(sorting.dip)}`, kind: '' },
    { at: middles.gate1, name: 'first gate', more: wrongEdge, kind: broken.has('gate.1') ? ' wrong' : '' },
    { at: middles.gate2, name: 'second gate', more: `edge ${down(-dimensions.gate2)}`, kind: '' },
  ]
  const y = layout.camTop - (isWide ? 26 : 6)
  return named.flatMap(({ at, name, more, kind }) => [
    { kind: 'middle strong', x: x(at) + (isWide ? 10 : 0), y, text: name },
    ...(isWide ? [{ kind: `middle${kind}`, x: x(at), y: y + 18, text: more }] : []),
  ])
}

const nameLabels = (view: View): Lettering[] => {
  const { layout, frame, seen, x, way } = view
  const step = layout.name === 'wide' ? 1 : 2
  return seen.flatMap((index) => {
    if (index === null || index % step !== 0) return []
    const place = x(sinceLetGo(frame.x, index, way))
    if (place < 16 || place > layout.width - 16) return []
    const mark = markOf(frame, index)
    const wrong = mark === 'missed' || mark === 'extra' || mark === 'gone' ? ' wrong' : ''
    return [
      {
        kind: `middle${wrong || (mark === 'held' ? ' selected' : '')}`,
        x: place,
        y: layout.names,
        text: needleName(index),
      },
    ]
  })
}

const laneLabels = (view: View): Lettering[] => {
  const { layout, x, way, sorting } = view
  const { behind } = reaches(layout)
  const isWide = layout.name === 'wide'
  const kind = way === 1 ? '' : 'end '
  const place = x(behind) + way * (isWide ? 22 : 6)
  const up = isWide ? 9 : 6
  return [
    {
      kind: `${kind}strong`,
      x: place,
      y: layout.line - cams.plainTravel * perMm(layout) - layout.half - up,
      text: isWide ? `plain: ${millimetres(cams.plainTravel)} back` : 'plain',
    },
    {
      kind: `${kind}${sorting.held.outcome === 'selected' && sorting.canHold ? 'selected' : 'wrong'}`,
      x: place,
      y: layout.line + cams.selectedTravel * perMm(layout) + layout.half + up + 9,
      text: isWide ? `selected: ${millimetres(cams.selectedTravel)} forward` : 'selected',
    },
  ]
}

/** The lines of words below both views. */
const wordLines = (view: View): Lettering[] => {
  const { frame, sorting, slow, layout } = view
  const isWide = layout.name === 'wide'
  const { free, held, canHold } = sorting
  const fates: readonly (readonly [string, Fate])[] = [
    [free.outcome === 'plain' ? 'strong' : 'wrong', freeWords(sorting)],
    [canHold && held.outcome === 'selected' ? 'selected' : 'wrong', heldWords(sorting)],
    ...(slow === null ? [] : [[slowIsWrong(view) ? 'wrong' : 'strong', slowWords(frame, slow)] as const]),
  ]
  const rows = isWide
    ? fates.map(([kind, words]) => ({ kind, text: words.join('; ') }))
    : fates.flatMap(([kind, words]) => words.map((text) => ({ kind, text })))
  const edges = `edges ${down(-sorting.gate1)} and ${down(-dimensions.gate2)}`
  const last = isWide ? [] : [{ kind: '', text: edges }]
  return [
    ...rows,
    ...last,
    {
      kind: '',
      text: isWide
        ? timeWords(frame, sorting)
        : `${gapWords(sorting)} to the first gate at ${frame.condition.speed} mm/s`,
    },
  ].map(({ kind, text }, n) => ({ kind, x: isWide ? 62 : 4, y: layout.words + n * layout.wordStep, text }))
}

/** Samples of the lines that the words below speak of, in the same order. */
export const keyInk = (view: View): Ink[] => {
  const { layout, sorting, slow } = view
  if (layout.name === 'narrow') return []
  const sample = (n: number): string => {
    const y = layout.words + n * layout.wordStep - 4.5
    return polyline([
      [16, y],
      [50, y],
    ])
  }
  return [
    { kind: `way${sorting.free.outcome === 'plain' ? '' : ' wrong'}`, d: sample(0) },
    { kind: 'glow-line', d: sorting.canHold ? sample(1) : '' },
    { kind: sorting.canHold ? 'way held' : 'way wrong', d: sample(1) },
    { kind: `way slow${slowIsWrong(view) ? ' wrong' : ''}`, d: slow === null ? '' : sample(2) },
  ]
}

/** Every label of the figure. */
export const labelsOf = (view: View): Lettering[] => {
  const { layout, way, x } = view
  const isWide = layout.name === 'wide'
  const heading = isWide
    ? [
        { kind: 'strong', x: 14, y: 20, text: 'from above' },
        { kind: 'strong', x: 14, y: 276, text: 'from the side' },
        { kind: '', x: 98, y: 276, text: `heights ${lift} times as large as lengths` },
        {
          kind: 'middle strong',
          x: x(-1.25),
          y: 20,
          text: way === 1 ? 'carriage moves right →' : '← carriage moves left',
        },
        { kind: 'end', x: layout.width - 14, y: 20, text: `needles, ${millimetres(dimensions.pitch)} apart` },
      ]
    : [{ kind: 'end', x: layout.width - 2, y: layout.height - 6, text: `heights × ${lift}` }]
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
export const balloonsOf = (view: View): Balloon[] => {
  const { layout, x } = view
  if (layout.name === 'narrow') return []
  const y = layout.camTop - 30.5
  return [
    { number: 6, x: x(middles.presser) - 27, y },
    { number: 7, x: x(middles.gate1) - 34, y },
    { number: 8, x: x(middles.gate2) - 44, y },
    { number: 9, x: layout.width - 154, y: 15.5 },
  ]
}
