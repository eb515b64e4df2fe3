import { needleName } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { dueRow } from '../../mechanism/turn.ts'
import type { Needle } from '../../mechanism/indices.ts'
import { drawBalloonHeads } from '../shared/balloons.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import type { Row } from './stitches.ts'
import { type FabricView, needleX } from './view.ts'

interface Label {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly kind: 'name' | 'more' | 'wrong'
  /** At which end of the text `x` is; at its start where it is left out. */
  readonly anchor?: 'end'
}

/** How many stitches of these rows are not the ones asked for, as a label. */
const differLabel = (view: FabricView, rows: readonly Row[], x: number, y: number): Label => {
  const [first = 0, last = 0] = [view.indexes[0], view.indexes.at(-1)]
  const isSeen = (index: number): boolean => index >= first && index <= last
  const wrong = rows.reduce((sum, row) => sum + row.wrong.filter(isSeen).length, 0)
  const all = rows.reduce((sum, row) => sum + row.knitted.filter(isSeen).length, 0)
  return wrong === 0
    ? { text: 'no stitch differs', x, y, kind: 'more' }
    : { text: `${wrong} of ${all} differ`, x, y, kind: 'wrong' }
}

const lineHeight = 14.5

/** A name with lines of smaller text below it. */
const block = (x: number, y: number, name: string, more: readonly string[]): Label[] => [
  { text: name, x, y, kind: 'name' },
  ...more.map((text, n): Label => ({ text, x, y: y + lineHeight * (n + 1), kind: 'more' })),
]

const wideLabels = (view: FabricView, rows: readonly Row[]): Label[] => {
  const { layout, frame } = view
  const { row, pass } = frame.pass
  return [
    ...block(27, layout.card - 1, 'card', [row === null ? 'no card' : `row ${row} is read`]),
    ...block(27, layout.line + 2, 'needles', [`set out in pass ${pass}`, 'to knit the next row']),
    ...block(0, layout.knitted + 11, 'as knitted', []),
    differLabel(view, rows, 0, layout.knitted + 11 + lineHeight),
    ...block(0, layout.knitted + 58, 'knit side,', [
      'laid out needle',
      'for needle; row by',
      'row the number of',
      'its card row',
    ]).map((label): Label => ({ ...label, kind: 'more' })),
    ...block(0, layout.asked + 11, 'as the card asks', []),
  ]
}

const narrowLabels = (view: FabricView, rows: readonly Row[]): Label[] => {
  const { layout } = view
  const below = layout.knitted + layout.rows * layout.stitch.height + 14
  const right = layout.left + layout.needles * layout.stitch.width
  // From the other side: in a small picture letters are large, and beside each other they would meet.
  return [
    { text: 'As knitted', x: layout.left, y: below, kind: 'name' },
    { ...differLabel(view, rows, right, below), anchor: 'end' },
    { text: 'As the card asks', x: layout.left, y: layout.names, kind: 'name' },
  ]
}

/** Beside each row of fabric the card row that set it out; none for the plain rows before the card. */
const drawRowNumbers = (band: Group, view: FabricView): void => {
  const { layout, run } = view
  const numbers = view.passes.flatMap((pass, n) => {
    const y = (n + 0.82) * layout.stitch.height
    return pass < 2 || layout.shape === 'narrow'
      ? []
      : [
          { y: layout.knitted + y, row: run.passOf(pass - 1).row },
          { y: layout.asked + y, row: dueRow(run.condition, pass - 1) },
        ]
  })
  drawShapes(drawGroup(band, 'row-numbers'), 'text', 'row-number', numbers, ({ y, row }) => ({
    x: layout.left - 7,
    y: px(y),
    text: row === null ? '' : String(row),
  }))
}

/** What the two yarns and the dashed line stand for. */
const drawKey = (band: Group, view: FabricView): void => {
  const { layout } = view
  const top = layout.asked + 30
  const lines =
    layout.shape === 'wide'
      ? [
          { kind: 'second', text: 'selected', y: top },
          { kind: 'first', text: 'plain', y: top + 23 },
          { kind: 'float', text: `float over ${view.floatLimit}`, y: top + 46 },
        ]
      : []
  drawShapes(band, 'rect', 'key-ground', lines, ({ y }) => ({ x: 0, width: 18, height: 18, y }))
  drawShapes(band, 'path', 'key-mark', lines, ({ kind, y }) => ({
    'data-kind': kind,
    d: kind === 'float' ? 'M1.5,9H16.5M1.5,6v6M16.5,6v6' : 'M3.6,3q.5 7 5.4 11q4.9-4 5.4-11',
    transform: `translate(0 ${y})`,
  }))
  drawShapes(band, 'text', 'key-text', lines, ({ y, text }) => ({ x: 25, y: y + 13, text }))
}

/** What is beside the bands: names, numbers, and how many stitches differ. */
export const drawLabels = (root: Group, view: FabricView, rows: readonly Row[]): void => {
  const { layout } = view
  const isWide = layout.shape === 'wide'
  const band = drawGroup(root, 'label-band')
  const balloons = [
    { number: 1, x: 11, y: layout.card },
    { number: 9, x: 11, y: layout.line + 4 },
  ]
  drawBalloonHeads(band, isWide ? balloons : [])
  drawShapes(
    drawGroup(band, 'labels'),
    'text',
    'label',
    isWide ? wideLabels(view, rows) : narrowLabels(view, rows),
    ({ kind, x, y, text, anchor }) => ({
      'data-kind': kind,
      ...(anchor === undefined ? {} : { 'text-anchor': anchor }),
      x,
      y: px(y),
      text,
    }),
  )
  drawRowNumbers(band, view)
  drawKey(band, view)
}

/** Names of every eighth needle, with a tick from the fabric. */
export const drawNames = (band: Group, view: FabricView): void => {
  const { layout } = view
  const isNamed = (index: Needle): boolean => Number(needleName(index).slice(1)) % dimensions.strips === 1
  const named = layout.shape === 'wide' ? view.indexes.filter(isNamed) : []
  const below = layout.knitted + layout.rows * layout.stitch.height
  drawShape(band, 'path', 'name-ticks', {
    d: named.map((index) => `M${px(needleX(view, index))},${below + 2}v5`).join(''),
  })
  drawShapes(drawGroup(band, 'needle-labels'), 'text', 'needle-label', named, (index) => ({
    x: px(needleX(view, index)),
    y: layout.names,
    text: needleName(index),
  }))
}
