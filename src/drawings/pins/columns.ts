import { at as entryAt } from '../../mechanism/lookup.ts'
import { measureOfColumn } from '../../mechanism/indices.ts'
import { hatch } from '../shared/definitions.ts'
import { boxPath, px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group, into } from '../shared/svg.ts'
import { columnPitch, levelY, rightOf } from './layout.ts'
import { legShape, pivotAside, pivotDepth, rockerShape, rodShape } from './shapes.ts'
import type { ColumnView, PinsView } from './view.ts'

/** Each column of the window in a slot that it keeps while the window moves; null for a slot without one. */
export const slots = (view: PinsView): (ColumnView | null)[] => {
  const count = view.layout.columns + 2
  return Array.from(
    { length: count },
    (_, slot) => view.columns.find(({ column }) => column % count === slot) ?? null,
  )
}

/** How a pin is drawn: high or low, moved by the sweep, or broken. */
export const pinLook = (column: ColumnView): string => {
  if (column.pinBroken) return 'broken'
  if (column.lean !== 0) return 'pushed'
  return column.isHigh ? 'high' : 'low'
}

/** A pin's front leg, pushed to the left; before it the rocker, whose top it takes along, and the rocker's rod. */
const drawColumn = (group: Group, view: PinsView, column: ColumnView): void => {
  const { perMm, datum, rods } = view.layout
  const lost = measureOfColumn(view.frame.condition.lost, column.column)
  const isDead = view.frame.condition.rockerDead[column.column - 1] === 1
  const rod = rodShape(lost, column.out, perMm, rods - datum + 4)
  const rocker = rockerShape(lost, column.out, perMm, isDead)
  const leg = legShape(column.height, perMm)
  const moves = column.out > 0
  drawShape(group, 'path', 'amber', { d: moves ? rod + rocker : '' })
  const pushed = drawGroup(group, 'leg-place', { transform: `translate(${px(column.lean * perMm)} 0)` })
  drawShape(pushed, 'path', 'amber', { d: column.lean === 0 ? '' : leg })
  drawShape(pushed, 'path', 'feeler', {
    d: leg,
    'data-look': pinLook(column),
    fill: column.pinBroken ? hatch(view.prefix, 'broken') : '',
    'data-part': `pin.${column.column}`,
  })
  drawShape(group, 'path', 'rocker-rod', { d: rod, 'data-look': moves ? 'pushed' : '' })
  drawShape(group, 'path', 'rocker-arm', {
    d: rocker,
    'data-look': column.rockerBroken ? 'broken' : moves ? 'pushed' : '',
    'data-part': `rocker.${column.column}`,
  })
  drawShape(group, 'circle', 'hinge', {
    cx: px(pivotAside(lost) * perMm),
    cy: px(pivotDepth * perMm),
    r: px(0.16 * perMm),
  })
}

/** The front legs with their rockers and rods, column by column. */
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

/** Thickness of the plates, the lower plate's depth below the upper's, and the room round legs and rods, in mm. */
const plates = { thick: 0.4, lower: 5, legRoom: 0.12, rodRoom: 0.3 } as const

/** A plate cut along its slots, the pieces between these edges; in pixels. */
const cutPlate = (
  view: PinsView,
  depth: number,
  slotOf: (column: ColumnView) => [number, number],
): string => {
  const { layout, columns } = view
  const top = levelY(layout, -depth)
  const far = columnPitch(layout)
  const edges = [layout.left - far, ...columns.flatMap(slotOf), rightOf(layout) + far]
  let path = ''
  for (let n = 0; n + 1 < edges.length; n += 2)
    path += boxPath(entryAt(edges, n), top, entryAt(edges, n + 1), top + plates.thick * layout.perMm)
  return path
}

/** The top plate, through whose slanted slots the front legs stand up, and the plate that guides the rods; in section. */
export const drawPlates = (parent: Group, view: PinsView): void => {
  const { layout, prefix } = view
  const { perMm } = layout
  const half = view.frame.condition.dimensions.pin / 2 + plates.legRoom
  const most = view.frame.condition.dimensions.sweepThrow
  const lost = view.frame.condition.dimensions.lost
  drawShape(parent, 'path', 'guide', {
    d:
      cutPlate(view, 0, ({ x }) => [x - (most + half) * perMm, x + half * perMm]) +
      cutPlate(view, plates.lower, ({ x }) => [
        x + (pivotAside(lost) - plates.rodRoom) * perMm,
        x + (pivotAside(lost) + view.frame.condition.dimensions.ratio * most - lost + plates.rodRoom) * perMm,
      ]),
    fill: hatch(prefix, 'cut'),
  })
  drawShape(parent, 'path', 'rail', {
    d: `M${layout.left},${px(levelY(layout, -pivotDepth))}H${px(rightOf(layout))}`,
  })
}
