import { dimensions } from '../../mechanism/dimensions.ts'
import { hatch } from '../shared/definitions.ts'
import { polyline, px, ring } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group, into } from '../shared/svg.ts'
import { slots } from './columns.ts'
import { columnPitch, planY, rightOf } from './layout.ts'
import { lens, neckHalf } from './shapes.ts'
import type { ColumnView, PinsView } from './view.ts'

const middle = (dimensions.pinHigh + dimensions.pinLow) / 2

/** A hole as it is drawn: as punched, torn where none should be, or blocked. */
const holeLook = ({ isHole, isWrong }: ColumnView): string =>
  isHole ? (isWrong ? 'torn' : 'hole') : isWrong ? 'blocked' : ''

const pinLook = (column: ColumnView): string => {
  if (column.pinBroken) return 'broken'
  if (column.lean !== 0) return 'pushed'
  return column.height > middle ? 'high' : 'low'
}

/** A column from above: the hole in the card where it really lies, and the pin's head under it or through it. */
const drawColumn = (group: Group, view: PinsView, column: ColumnView): void => {
  const { perMm } = view.layout
  const [R, r] = [(dimensions.hole / 2) * perMm, (dimensions.pin / 2) * perMm]
  const hole: [number, number] = [column.side * perMm, column.along * perMm]
  const look = holeLook(column)
  const isThrough = column.height > middle
  const isStopped = column.isHole && !column.fits
  drawShape(group, 'path', 'opening', {
    d: look === '' ? '' : ring(hole[0], hole[1], R),
    'data-look': look,
    fill: look === 'blocked' ? hatch(view.prefix, 'broken') : '',
  })
  const isOff = Math.hypot(...hole) > 0.5
  drawShape(group, 'path', 'hole-middle', {
    d: look !== '' && isOff ? `M${px(hole[0] - 5)},${px(hole[1])}h10m-5,-5v10` : '',
  })
  drawShape(group, 'path', 'hidden-pin', {
    d: column.hasCard && !isThrough ? ring(0, 0, r) : '',
    'data-look': isStopped ? 'stopped' : '',
    fill: isStopped ? hatch(view.prefix, 'broken') : 'none',
  })
  const wide = neckHalf * perMm
  drawShape(group, 'path', 'seen-neck', {
    d: column.lean === 0 ? '' : `M0,${px(-wide)}H${px(column.lean * perMm)}v${px(2 * wide)}H0Z`,
  })
  const isHidden = column.hasCard && !column.isHole
  const throughHole = lens([0, 0], r, hole, column.hasCard ? R : 4 * R)
  drawShape(group, 'path', 'seen-pin', {
    d: isThrough ? ring(column.lean * perMm, 0, r) : isHidden ? '' : throughHole,
    'data-look': pinLook(column),
  })
}

/** A freehand edge, where the drawing breaks the card off. */
const brokenEdge = (view: PinsView, y: number): [number, number][] => {
  const { layout } = view
  const step = columnPitch(layout) / 24
  const from = layout.left - step
  const count = Math.ceil((rightOf(layout) - from) / step) + 1
  return Array.from({ length: count }, (_, n) => [
    from + n * step,
    y + 1.6 * Math.sin(n / 2.3) + Math.sin(n / 5.1),
  ])
}

/** The piece of card that is shown, broken off on both sides. */
const pieceOf = (view: PinsView): string => {
  const bottom = brokenEdge(view, view.layout.planBottom).reverse()
  return `${polyline([...brokenEdge(view, view.layout.planTop), ...bottom])}Z`
}

/** The card from above with its holes, and the pins' heads. */
export const drawPlan = (root: Group, view: PinsView): void => {
  const { layout, frame } = view
  drawShape(root, 'path', 'sheet', {
    d: frame.pass.row === null ? '' : pieceOf(view),
    'data-part': 'card',
  })
  const groups = drawShapes(drawGroup(root, 'plan-columns'), 'g', 'plan-column', slots(view), (column) => ({
    display: column ? 'inline' : 'none',
    transform: column ? `translate(${px(column.x)} ${planY(layout)})` : '',
  }))
  groups.each(function (column) {
    if (column) drawColumn(into(this), view, column)
    else this.replaceChildren()
  })
}

/** Middle lines of the row and of each column, through both views. */
export const drawMiddles = (root: Group, view: PinsView): void => {
  const { layout, columns } = view
  const y = planY(layout)
  drawShape(root, 'path', 'middle-line', {
    d: [
      `M${layout.left},${y}H${px(rightOf(layout))}`,
      ...columns.map(({ x }) => `M${px(x)},${layout.planTop - 3}V${px(layout.datum + 3.4 * layout.perMm)}`),
    ].join(''),
  })
}
