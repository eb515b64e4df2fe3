import { dimensions } from '../../mechanism/dimensions.ts'
import { measureOfColumn } from '../../mechanism/indices.ts'
import { hatch } from '../shared/definitions.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group, into } from '../shared/svg.ts'
import { columnPitch, rightOf } from './layout.ts'
import { cupBottom, cupShape, leanAngle, pinLength, pinShape, rockerShape } from './shapes.ts'
import type { ColumnView, PinsView } from './view.ts'

/** Each column of the window in a slot that it keeps while the window moves; null for a slot without one. */
export const slots = (view: PinsView): (ColumnView | null)[] => {
  const count = view.layout.columns + 2
  return Array.from(
    { length: count },
    (_, slot) => view.columns.find(({ column }) => column % count === slot) ?? null,
  )
}

const middle = (dimensions.pinHigh + dimensions.pinLow) / 2

/** How a pin is drawn: high or low, moved by the sweep, or broken. */
const lookOf = (column: ColumnView): string => {
  if (column.pinBroken) return 'broken'
  if (column.lean !== 0) return 'pushed'
  return column.height > middle ? 'high' : 'low'
}

/** A pin in its rocker, both leaning about the pivot, and under them the rod that they push down. */
const drawColumn = (group: Group, view: PinsView, column: ColumnView): void => {
  const { perMm, datum, rods } = view.layout
  const angle = leanAngle(column.height, column.lean)
  const pin = pinShape(pinLength(column.height, angle), perMm)
  const isDead = view.frame.condition.rockerDead[column.column - 1] === 1
  const rocker = rockerShape(perMm, isDead)
  const lost = measureOfColumn(view.frame.condition.lost, column.column)
  const cup = cupShape(lost, column.height > middle ? column.height : dimensions.pinHigh, perMm)
  const rod = `${cup}M0,${px(cupBottom * perMm)}V${px(rods - datum + dimensions.sweepThrow * perMm)}`
  const down = drawGroup(group, 'rod-place', { transform: `translate(0 ${px(column.out * perMm)})` })
  drawShape(down, 'path', 'amber', { d: column.out > 0 ? rod : '' })
  drawShape(down, 'path', 'rocker-rod', { d: rod, 'data-look': column.out > 0 ? 'pushed' : '' })
  const leaning = drawGroup(group, 'leaning', {
    transform: `rotate(${Math.round((angle * 18000) / Math.PI) / 100 + 0})`,
  })
  drawShape(leaning, 'path', 'amber', { d: column.lean === 0 ? '' : pin + rocker })
  drawShape(leaning, 'path', 'rocker-arm', {
    d: rocker,
    'data-look': column.rockerBroken ? 'broken' : column.out > 0 ? 'pushed' : '',
    'data-part': `rocker.${column.column}`,
  })
  drawShape(leaning, 'path', 'feeler', {
    d: pin,
    'data-look': lookOf(column),
    fill: column.pinBroken ? hatch(view.prefix, 'broken') : '',
    'data-part': `pin.${column.column}`,
  })
  drawShape(group, 'circle', 'hinge', { r: px(0.16 * perMm) })
}

/** The pins in their rockers and the rods below, column by column. */
export const drawColumns = (parent: Group, view: PinsView): void => {
  const groups = drawShapes(drawGroup(parent, 'columns'), 'g', 'column', slots(view), (column) => ({
    display: column ? 'inline' : 'none',
    transform: column ? `translate(${px(column.x)} ${view.layout.datum})` : '',
  }))
  groups.each(function (column) {
    if (column) drawColumn(into(this), view, column)
    else this.replaceChildren()
  })
}

/** Top and thickness of the plate that guides the rods, in mm below the pivots, and the room around each rod. */
const plate = { top: 5.15, thick: 0.5, room: 0.22 }

/** The plate that guides the rods, in section. */
export const drawPlate = (parent: Group, view: PinsView): void => {
  const { layout, columns, prefix } = view
  const [top, height] = [layout.datum + plate.top * layout.perMm, plate.thick * layout.perMm]
  const room = plate.room * layout.perMm
  const far = columnPitch(layout)
  const edges = [
    layout.left - far,
    ...columns.flatMap(({ x }) => [x - room, x + room]),
    rightOf(layout) + far,
  ]
  let path = ''
  for (let n = 0; n + 1 < edges.length; n += 2) {
    const [from = 0, to = 0] = [edges[n], edges[n + 1]]
    path += `M${px(from)},${px(top)}H${px(to)}v${px(height)}H${px(from)}Z`
  }
  drawShape(parent, 'path', 'guide', { d: path, fill: hatch(prefix, 'cut') })
}
