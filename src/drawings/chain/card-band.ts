import { modulo } from '../../mechanism/bed.ts'
import { isPunched } from '../../mechanism/card.ts'
import { allColumns, type Column, measureOfColumn, toCardRow } from '../../mechanism/indices.ts'
import { holeNow } from '../../mechanism/pin.ts'
import { sweepShown } from '../../words/figures/sweep.ts'
import { hasChanged } from '../shared/memo.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group, into } from '../shared/svg.ts'
import { columnX, perMm } from './layout.ts'
import type { ChainView } from './view.ts'

interface Hole {
  readonly column: Column
  readonly row: number
  readonly isHole: boolean
  readonly isWrong: boolean
}

/** The holes of a card row as it lies in the reader. `row` from 1; wraps round the loop. */
const holesOf = (view: ChainView, row: number): Hole[] => {
  const { condition } = view.frame
  const rows = condition.card?.length ?? 1
  const own = toCardRow(modulo(row - 1, rows) + 1, rows)
  return allColumns.map((column) => {
    const isHole = holeNow(condition, own, column)
    return { column, row: own, isHole, isWrong: isHole !== isPunched(condition.card, own, column) }
  })
}

const holeRadius = ({ layout }: ChainView, isHole: boolean): number =>
  isHole ? (layout.shape === 'wide' ? 5 : 4) : 1.1

const holeKind = ({ isHole, isWrong }: Hole): string =>
  `${isHole ? 'hole' : 'none'}${isWrong ? ' wrong' : ''}`

/** The row being read: each hole by itself, for some of them push. */
const drawRead = (group: Group, view: ChainView, holes: readonly Hole[], y: number): void => {
  drawShapes(group, 'circle', 'mark', holes, (hole) => ({
    cx: px(columnX(view.layout, hole.column)),
    cy: px(y),
    'data-push': measureOfColumn(view.frame.pinLeans, hole.column) > 0 ? 'push' : '',
    r: holeRadius(view, hole.isHole),
    'data-hole': holeKind(hole),
  }))
}

const kinds = ['hole', 'none', 'hole wrong', 'none wrong'] as const

/** A row to come: all holes of a kind as one path, for they only move together. */
const drawLater = (group: Group, view: ChainView, holes: readonly Hole[], y: number): void => {
  drawShapes(group, 'path', 'mark', kinds, (kind) => ({
    'data-hole': kind,
    d: holes
      .filter((hole) => holeKind(hole) === kind)
      .map(({ column, isHole }) => {
        const r = holeRadius(view, isHole)
        return `M${px(columnX(view.layout, column) - r)},${px(y)}a${r},${r} 0 1 0 ${2 * r},0a${r},${r} 0 1 0 ${-2 * r},0`
      })
      .join(''),
  }))
}

/** The card: the row being read at the bottom, the rows to come above it. */
export const drawCard = (root: Group, view: ChainView): void => {
  const { layout, frame } = view
  const { condition, pass } = frame
  const half = layout.rowSpacing / 2
  const band = drawGroup(root, 'card-band')
  const middle = columnX(layout, 12.5)
  const turn = (Math.atan(condition.cardSkew / 4.5) * 180) / Math.PI
  const shift = px(condition.cardSide * perMm(layout))
  const sheet = drawGroup(band, 'sheet', {
    transform:
      shift === 0 && turn === 0
        ? ''
        : `rotate(${px(turn)} ${px(middle)} ${layout.cardRow}) translate(${shift} 0)`,
    display: pass.row === null ? 'none' : 'inline',
  })
  drawShape(sheet, 'rect', 'paper', {
    x: layout.reader - 4,
    y: layout.cardTop,
    width: 24 * layout.pitch + 8,
    height: layout.cardRow + half + 2 - layout.cardTop,
    rx: 2,
    'data-part': 'card',
  })

  const row = pass.row ?? 1
  const offsets = Array.from({ length: layout.cardRows }, (_, n) => n)
  const rows = drawShapes(sheet, 'g', 'card-row', offsets, (offset) => ({
    'data-read': offset === 0 ? 'now' : 'later',
  }))
  rows.each(function (offset) {
    const group = into(this)
    const holes = holesOf(view, row + offset)
    const y = layout.cardRow - (offset + view.roll) * layout.rowSpacing
    if (offset === 0) drawRead(group, view, holes, y)
    else if (hasChanged(group, [condition, holes[0]?.row, y])) drawLater(group, view, holes, y)
  })
  if (layout.shape === 'wide') drawNumbers(band, sheet, view, offsets)
}

/** The rows' numbers at the card's side, and the columns' above it. */
const drawNumbers = (band: Group, sheet: Group, view: ChainView, offsets: readonly number[]): void => {
  const { layout, frame } = view
  const { condition, pass } = frame
  if (hasChanged(sheet, [condition, pass.row, view.roll])) {
    const rows = condition.card?.length ?? 1
    drawShapes(sheet, 'text', 'row-name', offsets, (offset) => ({
      x: layout.reader - 10,
      y: px(layout.cardRow - (offset + view.roll) * layout.rowSpacing + 4),
      'data-read': offset === 0 ? 'now' : 'later',
      text: String(modulo((pass.row ?? 1) + offset - 1, rows) + 1),
    }))
  }
  const sweep = sweepShown(frame)
  const now = sweep.isClear ? null : sweep.column
  if (!hasChanged(band, [now])) return
  drawShapes(band, 'text', 'column-name', allColumns, (column) => ({
    x: px(columnX(layout, column)),
    y: layout.numbers,
    'data-now': column === now ? 'now' : '',
    text: String(column),
  }))
}
