import { modulo } from '../../mechanism/bed.ts'
import { isPunched } from '../../mechanism/card.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { allColumns, type CardRow, type Column, toCardRow, toColumn } from '../../mechanism/indices.ts'
import { holeNow } from '../../mechanism/pin.ts'
import { rowsBetween, rowSeen } from '../../words/figures/card.ts'
import { drawClip, hatch } from '../shared/definitions.ts'
import { drawTexts, type Label } from '../shared/labels.ts'
import { polyline, px, ring } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import { columnX, perMm, rowSpacing, rowY } from './layout.ts'
import type { CardView } from './view.ts'

/** Card beyond the outer columns, in mm, with the holes that the drum's studs go through: this drawing's choice. */
const marginMm = 4.5
const studMm = 1.1

/** Rows drawn before and after the row being read, so that none is missing while the card rolls. */
const rowsBefore = 3
const rowsAfter = 11

/** How far the case reaches beyond the outer columns, in pixels. */
const caseMargin = (view: CardView): number => (view.layout.shape === 'wide' ? 36 : 22)

/** What is punched, torn or blocked at one place of the card as it lies in the reader. */
type PunchMark = 'hole' | 'none' | 'torn' | 'blocked'

const markOf = (view: CardView, row: CardRow, column: Column): PunchMark => {
  const { condition } = view.frame
  const isHole = holeNow(condition, row, column)
  const own = condition.cardReversed ? dimensions.columns + 1 - column : column
  const wasHole = isPunched(condition.card, row, toColumn(own))
  if (isHole) return wasHole ? 'hole' : 'torn'
  return wasHole ? 'blocked' : 'none'
}

/** Row of the card, from 1, that is `ahead` rows ahead of the one being read. */
const rowAhead = ({ frame }: CardView, ahead: number): CardRow => {
  const rows = frame.condition.card?.length ?? 1
  return toCardRow(modulo((frame.pass.row ?? 1) - 1 + ahead, rows) + 1, rows)
}

const offsets = Array.from({ length: rowsBefore + rowsAfter + 1 }, (_, n) => n - rowsBefore)

const sheetMatrix = (view: CardView): string => {
  const { layout, frame } = view
  const { condition } = frame
  const slope = condition.cardSkew / dimensions.pitch
  const middle = columnX(layout, (dimensions.columns + 1) / 2)
  const side = condition.cardSide * perMm(layout)
  const down = -slope * middle - view.rows * rowSpacing(layout)
  return `matrix(1 ${Math.round(slope * 1e5) / 1e5} 0 1 ${px(side)} ${px(down)})`
}

/** The card's marks of some kinds, in a group that lies as the card does: shifted, askew, and rolling. */
const drawMarks = (group: Group, view: CardView, kinds: readonly PunchMark[]): void => {
  const { layout } = view
  const radius = px((view.frame.condition.dimensions.hole / 2) * perMm(layout))
  const paths: Record<PunchMark, string> = { hole: '', none: '', torn: '', blocked: '' }
  for (const ahead of offsets) {
    const row = rowAhead(view, ahead)
    for (const column of allColumns) {
      const mark = markOf(view, row, column)
      if (!kinds.includes(mark)) continue
      const [x, y] = [columnX(layout, column), rowY(layout, ahead)]
      paths[mark] += mark === 'none' ? `M${px(x)},${px(y)}h0` : ring(x, y, radius)
    }
  }
  drawShapes(drawGroup(group, 'punched'), 'path', 'punch', kinds, (mark) => ({
    'data-mark': mark,
    d: paths[mark],
    fill: mark === 'blocked' ? hatch(view.prefix, 'broken') : '',
  }))
}

/** A group that lies as the card does, seen in the card's window only. */
const lying = (root: Group, view: CardView, name: string): Group => {
  const { layout, frame, prefix } = view
  const box = { x: 0, y: layout.top, width: layout.width, height: layout.bottom - 6 - layout.top }
  const clip = drawClip(root, prefix, name, box)
  const outer = drawGroup(root, name, { 'clip-path': clip })
  const inner = drawGroup(outer, 'rolling', {
    display: frame.pass.row === null ? 'none' : 'inline',
    transform: sheetMatrix(view),
  })
  return inner
}

/** Holes torn or blocked, over the case so that they are not overlooked. */
export const drawWrongMarks = (root: Group, view: CardView): void => {
  drawMarks(lying(root, view, 'wrong'), view, ['torn', 'blocked'])
}

/** The card's outline, the holes for the drum's studs, and the joint of the loop. */
const drawPaper = (sheet: Group, view: CardView): void => {
  const { layout, frame } = view
  const margin = marginMm * perMm(layout)
  const [left, right] = [columnX(layout, 0.5) - margin, columnX(layout, dimensions.columns + 0.5) + margin]
  const [top, bottom] = [rowY(layout, rowsAfter + 4), rowY(layout, -rowsBefore - 4)]
  drawShape(sheet, 'path', 'sheet', {
    d: `M${px(left)},${px(top)}H${px(right)}V${px(bottom)}H${px(left)}Z`,
    'data-face': frame.condition.cardReversed ? 'back' : 'front',
  })
  const stud = px(studMm * perMm(layout))
  drawShape(sheet, 'path', 'stud-hole', {
    d: offsets
      .map((ahead) => {
        const y = rowY(layout, ahead)
        return ring(left + margin / 2, y, stud) + ring(right - margin / 2, y, stud)
      })
      .join(''),
  })
  const joints = offsets.filter((ahead) => rowAhead(view, ahead) === 1)
  drawShape(sheet, 'path', 'joint', {
    d: joints.map((ahead) => `M${px(left)},${px(rowY(layout, ahead - 0.5))}H${px(right)}`).join(''),
  })
}

/** Numbers of the card's own columns along its top: in the wrong order on a card that is the wrong way round. */
const drawColumnNumbers = (root: Group, view: CardView): void => {
  const { layout, frame } = view
  const y = layout.numbers
  const shift = frame.condition.cardSide * perMm(layout)
  drawShapes(
    drawGroup(root, 'column-numbers'),
    'text',
    'column-number',
    y === null || frame.pass.row === null ? [] : allColumns,
    (column) => ({
      x: px(columnX(layout, column) + shift),
      y: y ?? 0,
      'data-look': frame.condition.cardReversed ? 'wrong' : '',
      text: String(frame.condition.cardReversed ? dimensions.columns + 1 - column : column),
    }),
  )
}

/** Numbers of the rows at the card's right-hand edge. */
const rowLabels = (view: CardView): Label[] => {
  const { layout, frame } = view
  if (frame.pass.row === null) return []
  const x = columnX(layout, dimensions.columns + 0.5) + caseMargin(view) + 7
  const last = Math.floor((layout.reading - layout.top) / rowSpacing(layout) - 0.3)
  return Array.from({ length: last + 1 }, (_, ahead): Label => {
    const isNamed = ahead === 0 || ahead === rowsBetween
    const y = rowY(layout, ahead + view.rows) + 4
    const isSeen = y > layout.top + 12
    return { text: isSeen ? String(rowAhead(view, ahead)) : '', x, y, look: isNamed ? 'strong' : '' }
  })
}

/** The edge at which the card is broken off above. */
const drawBrokenEdge = (root: Group, view: CardView): void => {
  const { layout, frame } = view
  const margin = marginMm * perMm(layout)
  const side = frame.condition.cardSide * perMm(layout)
  const [left, right] = [columnX(layout, 0.5) - margin, columnX(layout, dimensions.columns + 0.5) + margin]
  const wave = Array.from({ length: 61 }, (_, n): [number, number] => [
    side + left + ((right - left) * n) / 60,
    layout.top + 1.4 * Math.sin(n / 2.1) + 0.8 * Math.sin(n / 4.7),
  ])
  drawShape(root, 'path', 'broken-edge', { d: frame.pass.row === null ? '' : polyline(wave) })
}

/** The card from the front, drawn flat: the rows one sees above the case, and those inside it. */
export const drawSheet = (root: Group, view: CardView): void => {
  const sheet = lying(root, view, 'card')
  drawPaper(sheet, view)
  drawMarks(sheet, view, ['hole', 'none'])
  drawBrokenEdge(root, view)
  drawColumnNumbers(root, view)
  drawTexts(root, 'row-numbers', rowLabels(view))
}

/** The case in front of the lower rows, cut away to show them; rows that are not being read stand back. */
export const drawCase = (root: Group, view: CardView): void => {
  const { layout, frame } = view
  const margin = caseMargin(view)
  const [left, right] = [columnX(layout, 0.5) - margin, columnX(layout, dimensions.columns + 0.5) + margin]
  const inner = layout.shape === 'wide' ? 6 : 4
  const half = rowSpacing(layout) / 2
  const [a, b] = [px(left + inner), px(right - inner)]
  const upper = `M${a},${layout.slot + 3}H${b}V${px(layout.reading - half)}H${a}Z`
  drawShape(root, 'path', 'veil', {
    d: `${upper}M${a},${px(layout.reading + half)}H${b}V${layout.bottom - 6}H${a}Z`,
  })
  const outside = `M${px(left)},${layout.slot}H${px(right)}V${layout.bottom}H${px(left)}Z`
  const wave = Array.from({ length: 41 }, (_, n): [number, number] => [
    left + inner + ((right - left - 2 * inner) * n) / 40,
    layout.bottom - inner + 1.2 * Math.sin(n / 1.7),
  ])
  const hole: [number, number][] = [
    [right - inner, layout.slot + 5],
    [left + inner, layout.slot + 5],
  ]
  drawShape(root, 'path', 'case', {
    d: `${outside}${polyline([...wave, ...hole])}Z`,
  })
  drawShape(root, 'path', 'reading-line', { d: `M${px(left - 4)},${layout.reading}H${px(right + 4)}` })
  const seen = rowY(layout, rowsBetween)
  drawShape(root, 'path', 'pointer', {
    d: (frame.pass.row === null ? [] : [layout.reading, seen])
      .map((y) => `M${px(left - 3)},${px(y)}l-8,-4.5v9Z`)
      .join(''),
  })
}

/** Number of the row that one sees above the case; null without a card. */
export const seenRow = (view: CardView): number | null => {
  const { row } = view.frame.pass
  const count = view.frame.condition.card?.length
  return row === null || count === undefined ? null : rowSeen(row, count)
}
