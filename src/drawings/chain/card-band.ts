import { select } from 'd3'
import { modulo } from '../../mechanism/bed.ts'
import { hasHole } from '../../mechanism/card.ts'
import { holeNow } from '../../mechanism/pin.ts'
import { isStale } from '../shared/stale.ts'
import { change, changeText, type Group, keep, part, parts, px } from '../shared/svg.ts'
import { columnX, perMm } from './layout.ts'
import { columnNumbers, type View } from './view.ts'

interface Hole {
  readonly column: number
  readonly row: number
  readonly isHole: boolean
  readonly isWrong: boolean
}

/** The holes of a card row as it lies in the reader. `row` from 1; wraps round the loop. */
const holesOf = (view: View, row: number): Hole[] => {
  const { condition } = view.frame
  const rows = condition.card?.length ?? 1
  const own = modulo(row - 1, rows) + 1
  return columnNumbers.map((column) => {
    const isHole = holeNow(condition, own, column)
    return { column, row: own, isHole, isWrong: isHole !== hasHole(condition.card?.[own - 1] ?? 0, column) }
  })
}

const holeRadius = ({ layout }: View, isHole: boolean): number =>
  isHole ? (layout.name === 'wide' ? 5 : 4) : 1.1

const holeKind = ({ isHole, isWrong }: Hole): string =>
  `${isHole ? 'hole' : 'none'}${isWrong ? ' wrong' : ''}`

/** The row being read: each hole by itself, for some of them push. */
const drawRead = (group: Group, view: View, holes: readonly Hole[], y: number): void => {
  const circles = parts(group, 'circle', 'mark', holes)
  change(circles, 'cx', ({ column }) => px(columnX(view.layout, column)))
  change(circles, 'cy', () => px(y))
  change(circles, 'data-push', ({ column }) => ((view.frame.pinLeans[column - 1] ?? 0) > 0 ? 'push' : ''))
  change(circles, 'r', ({ isHole }) => holeRadius(view, isHole))
  change(circles, 'data-hole', holeKind)
}

const kinds = ['hole', 'none', 'hole wrong', 'none wrong'] as const

/** A row to come: all holes of a kind as one path, for they only move together. */
const drawLater = (group: Group, view: View, holes: readonly Hole[], y: number): void => {
  const marks = parts(group, 'path', 'mark', kinds)
  change(marks, 'data-hole', (kind) => kind)
  change(marks, 'd', (kind) =>
    holes
      .filter((hole) => holeKind(hole) === kind)
      .map(({ column, isHole }) => {
        const r = holeRadius(view, isHole)
        return `M${px(columnX(view.layout, column) - r)},${px(y)}a${r},${r} 0 1 0 ${2 * r},0a${r},${r} 0 1 0 ${-2 * r},0`
      })
      .join(''),
  )
}

/** The card: the row being read at the bottom, the rows to come above it. */
export const drawCard = (root: Group, view: View): void => {
  const { layout, frame } = view
  const { condition, pass } = frame
  const half = layout.rowSpacing / 2
  const band = part(root, 'g', 'card-band')
  const sheet = part(band, 'g', 'sheet')
  const middle = columnX(layout, 12.5)
  const turn = (Math.atan(condition.cardSkew / 4.5) * 180) / Math.PI
  change(sheet, 'transform', () => {
    const shift = px(condition.cardSide * perMm(layout))
    return shift === 0 && turn === 0
      ? ''
      : `rotate(${px(turn)} ${px(middle)} ${layout.cardRow}) translate(${shift} 0)`
  })
  change(sheet, 'display', () => (pass.row === null ? 'none' : 'inline'))
  const paper = part(sheet, 'rect', 'paper')
  change(paper, 'x', () => layout.reader - 4)
  change(paper, 'y', () => layout.cardTop)
  change(paper, 'width', () => 24 * layout.pitch + 8)
  change(paper, 'height', () => layout.cardRow + half + 2 - layout.cardTop)
  keep(paper, 'rx', 2)
  keep(paper, 'data-part', 'card')

  const row = pass.row ?? 1
  const offsets = Array.from({ length: layout.cardRows }, (_, n) => n)
  const rows = parts(sheet, 'g', 'card-row', offsets)
  change(rows, 'data-read', (offset) => (offset === 0 ? 'now' : 'later'))
  rows.each(function (offset) {
    const group = select<SVGGElement, null>(this)
    const holes = holesOf(view, row + offset)
    const y = layout.cardRow - (offset + view.roll) * layout.rowSpacing
    if (offset === 0) drawRead(group, view, holes, y)
    else if (isStale(group, [condition, holes[0]?.row, y])) drawLater(group, view, holes, y)
  })
  if (layout.name === 'wide') drawNumbers(band, sheet, view, offsets)
}

/** The rows' numbers at the card's side, and the columns' above it. */
const drawNumbers = (band: Group, sheet: Group, view: View, offsets: readonly number[]): void => {
  const { layout, frame } = view
  const { condition, pass } = frame
  if (isStale(sheet, [condition, pass.row, view.roll])) {
    const names = parts(sheet, 'text', 'row-name', offsets)
    change(names, 'x', () => layout.reader - 10)
    change(names, 'y', (offset) => px(layout.cardRow - (offset + view.roll) * layout.rowSpacing + 4))
    change(names, 'data-read', (offset) => (offset === 0 ? 'now' : 'later'))
    const rows = condition.card?.length ?? 1
    changeText(names, (offset) => String(modulo((pass.row ?? 1) + offset - 1, rows) + 1))
  }
  if (!isStale(band, [frame.column])) return
  const numbers = parts(band, 'text', 'column-name', columnNumbers)
  change(numbers, 'x', (column) => px(columnX(layout, column)))
  change(numbers, 'y', () => layout.numbers)
  change(numbers, 'data-now', (column) => (column === frame.column ? 'now' : ''))
  changeText(numbers, String)
}
