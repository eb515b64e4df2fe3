import { allColumns, toCardRow } from '../../mechanism/indices.ts'
import { modulo } from '../../mechanism/bed.ts'
import { isPunched } from '../../mechanism/card.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { holeNow } from '../../mechanism/pin.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, type Group } from '../shared/svg.ts'
import { columnAlong, levelHigh, type PlaceLayout, readerMm } from './layout.ts'
import { face, type Point, project } from './projection.ts'
import type { PlaceView } from './view.ts'

/** Height of the card where it lies over the pins' back legs: a pin that it stops is as high. */
export const cardLevel = (layout: PlaceLayout): number => levelHigh(layout, dimensions.pinLow)

/** How steep the card is, in radians from the level. */
const steep = 1.44

/** How far behind the pins the card lies flat, and how far before them. */
const flatOf = (layout: PlaceLayout): number => layout.card.row
const beforeOf = (layout: PlaceLayout): number => -0.75 * layout.card.row

/** Where the card is `far` pixels along itself from the row being read: flat, bending, then standing. */
const cardPoint = (layout: PlaceLayout, x: number, far: number): Point => {
  const { bend } = layout.card
  const [y, z] = [layout.reader.legs, cardLevel(layout)]
  const flat = flatOf(layout)
  if (far <= flat) return [x, y + far, z]
  const turned = Math.min(steep, (far - flat) / bend)
  const straight = Math.max(0, far - flat - steep * bend)
  return [
    x,
    y + flat + bend * Math.sin(turned) + straight * Math.cos(steep),
    z + bend * (1 - Math.cos(turned)) + straight * Math.sin(steep),
  ]
}

/** The card's left and right edges, in columns. */
export const cardEdges = [-0.3, dimensions.columns + 1.3] as const

/** A place on the card as it lies in the reader: `column` across it, `far` pixels along it from the row being read. */
export const onCard = (view: PlaceView, column: number, far: number): Point => {
  const { layout, frame } = view
  const { cardSide, cardSkew } = frame.condition
  const mm = readerMm(layout)
  const askew = cardSkew * (column - (dimensions.columns + 1) / 2) * mm
  return cardPoint(layout, columnAlong(layout, column) + cardSide * mm, far + askew)
}

const outlineOf = (view: PlaceView): string => {
  const { layout } = view
  const [from, to] = [beforeOf(layout), layout.card.high]
  const steps = 14
  const far = Array.from({ length: steps + 1 }, (_, n) => from + (n / steps) ** 1.3 * (to - from))
  return face(
    layout,
    ...far.map((at) => onCard(view, cardEdges[0], at)),
    ...far.reverse().map((at) => onCard(view, cardEdges[1], at)),
  )
}

/** The card's holes as dots: those of the level rows, those of the standing ones, and those that are wrong. */
const dots = (view: PlaceView): { level: string; standing: string; wrong: string } => {
  const { layout, frame } = view
  const { condition, pass } = frame
  const found = { level: '', standing: '', wrong: '' }
  const rows = condition.card?.length ?? 1
  const spacing = layout.card.row
  const last = Math.floor(layout.card.high / spacing - 0.8 - view.roll)
  for (let n = 0; n <= last; n++) {
    const row = toCardRow(modulo((pass.row ?? 1) - 1 + n, rows) + 1, rows)
    const far = (n + view.roll) * spacing
    const isLevel = far < flatOf(layout) + layout.card.bend * 0.7
    for (const column of allColumns) {
      const isHole = holeNow(condition, row, column)
      const isWrong = isHole !== isPunched(condition.card, row, column)
      if (!isHole && !isWrong) continue
      const [left, top] = project(layout, onCard(view, column, far))
      found[isWrong ? 'wrong' : isLevel ? 'level' : 'standing'] += `M${px(left)},${px(top)}h.01`
    }
  }
  return found
}

/** The card as it is in the reader, with its own rows: the one being read lies over the pins' back legs. */
export const drawCard = (root: Group, view: PlaceView): void => {
  const isThere = view.frame.pass.row !== null
  const group = drawGroup(root, 'card-standing', {
    'data-part': 'card',
    display: isThere ? 'inline' : 'none',
  })
  const { level, standing, wrong } = isThere ? dots(view) : { level: '', standing: '', wrong: '' }
  drawShape(group, 'path', 'card-sheet', { d: isThere ? outlineOf(view) : '' })
  drawShape(group, 'path', 'card-dots level', { d: level })
  drawShape(group, 'path', 'card-dots standing', { d: standing })
  drawShape(group, 'path', 'card-dots wrong', { d: wrong })
}
