import { dimensions } from '../../mechanism/dimensions.ts'
import { hatch } from '../shared/definitions.ts'
import { outline, polyline, px, ring } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group, into } from '../shared/svg.ts'
import { forwardOf, wedgeFlank } from '../shared/wedge.ts'
import { pinLook, slots } from './columns.ts'
import { columnPitch, planY, rightOf } from './layout.ts'
import { sweepMiddles } from './section.ts'
import { lens } from './shapes.ts'
import type { ColumnView, PinsView } from './view.ts'

/** A hole as it is drawn: as punched, torn where none should be, or blocked. */
const holeLook = ({ isHole, isWrong }: ColumnView): string =>
  isHole ? (isWrong ? 'torn' : 'hole') : isWrong ? 'blocked' : ''

/** A column from above: the hole in the card where it really lies, and the pin's back leg under it or through it. */
const drawColumn = (group: Group, view: PinsView, column: ColumnView): void => {
  const { perMm } = view.layout
  const [R, r] = [
    (view.frame.condition.dimensions.hole / 2) * perMm,
    (view.frame.condition.dimensions.pin / 2) * perMm,
  ]
  const hole: [number, number] = [column.side * perMm, column.along * perMm]
  const look = holeLook(column)
  const isThrough = column.isHigh
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
  const isHidden = column.hasCard && !column.isHole
  const throughHole = lens([0, 0], r, hole, column.hasCard ? R : 4 * R)
  drawShape(group, 'path', 'seen-pin', {
    d: isThrough ? ring(0, 0, r) : isHidden ? '' : throughHole,
    'data-look': pinLook(column),
  })
}

/** Half a leg's thickness, and how far around it its slot is wider, in mm. */
const half = dimensions.pin / 2
const slotRoom = 0.12

/** A slanted slot of the top plate: a long hole from where a leg is at rest to where the sweep pushes it. */
const slotShape = (perMm: number): string => {
  const r = (half + slotRoom) * perMm
  const [x, y] = [-dimensions.sweepThrow * perMm, forwardOf(dimensions.sweepThrow) * perMm]
  const long = Math.hypot(x, y)
  const [ux, uy] = [(-y / long) * r, (x / long) * r]
  return (
    `M${px(ux)},${px(uy)}A${px(r)},${px(r)} 0 0 1 ${px(-ux)},${px(-uy)}` +
    `L${px(x - ux)},${px(y - uy)}A${px(r)},${px(r)} 0 0 1 ${px(x + ux)},${px(y + uy)}Z`
  )
}

/** A front leg from above in its slot, and beneath the plates the bow of the U from the back leg to it. */
const drawFrontLeg = (group: Group, view: PinsView, column: ColumnView): void => {
  const { layout } = view
  const { perMm } = layout
  const [x, y] = [column.lean * perMm, forwardOf(Math.abs(column.lean)) * perMm]
  const back = planY(layout) - layout.legs
  const r = half * perMm
  const leg = ring(x, y, px(r))
  drawShape(group, 'path', 'slot', { d: slotShape(perMm) })
  drawShape(group, 'path', 'bow', { d: `M0,${px(back + r)}L${px(x)},${px(y - r)}` })
  drawShape(group, 'path', 'amber', { d: column.lean === 0 ? '' : leg })
  drawShape(group, 'path', 'front-leg', { d: leg, 'data-look': pinLook(column) })
}

/** How far behind its place the sweep is drawn that stands clear of the legs, in mm. */
const clearBy = 0.7

/** The sweeps from above: long wedges behind the legs, with the flank that pushes them. */
const wedges = (view: PinsView): string => {
  const { layout, sweep } = view
  const { perMm } = layout
  const [behind, up] = [half + 0.75, sweep.isClear ? clearBy : 0]
  const flank = wedgeFlank(half)
  const y = (front: number): number => layout.legs + (front - up) * perMm
  return sweepMiddles(view)
    .map((x) => {
      const at = (right: number): number => x + right * perMm
      const edge = flank.map(({ right, front }): [number, number] => [at(right), y(front)])
      const [first, last] = [edge[0]?.[0] ?? x, edge.at(-1)?.[0] ?? x]
      return outline([[first, y(-behind)], ...edge, [last, y(-behind)]])
    })
    .join('')
}

/** The front legs from above in the slanted slots of the top plate, and the wedge that pushes those that stand high. */
export const drawFront = (root: Group, view: PinsView): void => {
  const { layout } = view
  const groups = drawShapes(drawGroup(root, 'front-legs'), 'g', 'front-column', slots(view), (column) => ({
    display: column ? 'inline' : 'none',
    transform: column ? `translate(${px(column.x)} ${layout.legs})` : '',
  }))
  groups.each(function (column) {
    if (column) drawFrontLeg(into(this), view, column)
    else this.replaceChildren()
  })
  const isBroken = view.broken.has('sweep') || view.broken.has('belt')
  drawShape(root, 'path', 'wedge', {
    d: wedges(view),
    'data-look': view.sweep.isClear ? 'clear' : isBroken ? 'broken' : '',
    'data-part': 'sweep',
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

/** The card from above with its holes, and the pins' back legs. */
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

/** Middle lines of both rows of legs and of each column, through both views. */
export const drawMiddles = (root: Group, view: PinsView): void => {
  const { layout, columns } = view
  const y = planY(layout)
  drawShape(root, 'path', 'middle-line', {
    d: [
      `M${layout.left},${y}H${px(rightOf(layout))}`,
      `M${layout.left},${layout.legs}H${px(rightOf(layout))}`,
      ...columns.map(({ x }) => `M${px(x)},${layout.planTop - 3}V${px(layout.datum)}`),
    ].join(''),
  })
}
