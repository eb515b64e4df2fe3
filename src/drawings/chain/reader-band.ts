import { at as entryAt } from '../../mechanism/lookup.ts'
import { sweepEnd } from '../../mechanism/sweep.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { allColumns, type Column, measureOfColumn } from '../../mechanism/indices.ts'
import { holePresented } from '../../mechanism/pin.ts'
import { sweepShown } from '../../words/figures/sweep.ts'
import { boxPath, outline, px, ring } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group, keyed, keyOf } from '../shared/svg.ts'
import { wedgeEnds } from '../shared/wedge.ts'
import { type ChainLayout, columnX, liftMm, perMm } from './layout.ts'
import type { ChainView } from './view.ts'

/** Thickness of card as drawn, in mm of height. */
const cardThickness = 0.22

/** A level in mm above the pins' datum, as a height in the picture. */
export const levelY = (layout: ChainLayout, height: number): number =>
  layout.pinDatum - height * liftMm(layout)

/** Half a rocker's thickness, in pixels. */
const rockerHalf = ({ shape }: ChainLayout): number => (shape === 'wide' ? 1.8 : 1.4)

/** Where a column's rocker turns: at rest its top is beside the pin's front leg, on the left. */
export const rockerX = (layout: ChainLayout, column: Column): number =>
  columnX(layout, column) - (layout.shape === 'wide' ? 3.6 : 2.6)

/** Half the height of a rocker: both its ends turn as far about its middle. */
const armOf = (layout: ChainLayout): number => layout.foot - layout.pivot

/** A rocker: its top goes to the left with the pin's leg, its lower end with the rod to the right, `out` pixels. */
const rockerShape = (layout: ChainLayout, column: Column, out: number): string => {
  const [x, half, arm] = [rockerX(layout, column), rockerHalf(layout), armOf(layout)]
  const at = (right: number, down: number): [number, number] => [x + right, layout.pivot + down]
  return outline([
    at(-half - out, -arm),
    at(half - out, -arm),
    at(half, 0),
    at(half + out, arm),
    at(-half + out, arm),
    at(-half, 0),
  ])
}

/** The card edge-on, over the back legs: a bar with a gap wherever one goes through. */
const cardSection = (view: ChainView): string => {
  const { layout, frame } = view
  const { condition, pass } = frame
  if (pass.row === null) return ''
  const bottom = levelY(layout, view.frame.condition.dimensions.pinLow)
  const top = levelY(layout, view.frame.condition.dimensions.pinLow + cardThickness)
  const gap = (view.frame.condition.dimensions.hole / 2) * perMm(layout)
  const edges: number[] = [layout.reader - 4]
  for (const column of allColumns)
    if (holePresented(condition, pass.row, column))
      edges.push(columnX(layout, column) - gap, columnX(layout, column) + gap)
  edges.push(layout.reader + 24 * layout.pitch + 4)
  let path = ''
  for (let n = 0; n + 1 < edges.length; n += 2) {
    const [left = 0, right = 0] = [edges[n], edges[n + 1]]
    if (right - left > 0.2) path += boxPath(left, top, right, bottom)
  }
  return path
}

/** Height of the belt that carries the sweep, in mm, and of the edge of a sweep that stands clear of the pins. */
const beltHigh = 3.75
const clearEdge = 3.12

/** The sweep from the front: a long wedge, with a line where its flat meets each ramp, behind the legs that it pushes. */
const sweepShape = (view: ChainView): string => {
  const { layout, frame } = view
  const sweep = sweepShown(frame)
  const mm = perMm(layout)
  const edge = levelY(layout, sweep.isClear ? clearEdge : frame.condition.sweepEdge)
  const top = levelY(layout, beltHigh)
  // In the narrow picture the reader's wall hides a sweep on its way in or out, for the names' sake.
  const room = layout.shape === 'wide' ? layout.pitch * sweepEnd(dimensions) : 8
  const [first, last] = [layout.reader - room, layout.reader + 24 * layout.pitch + room]
  const inside = (x: number): number => Math.max(first, Math.min(last, x))
  return [sweep.at - 24, sweep.at, sweep.at + 24]
    .map((at) => columnX(layout, at))
    .filter((x) => x + wedgeEnds.right * mm > first && x + wedgeEnds.left * mm < last)
    .map((x) => {
      const ticks = [wedgeEnds.flatLeft, wedgeEnds.flatRight]
        .map((right) => x + right * mm)
        .filter((place) => place > first && place < last)
        .map((place) => `M${px(place)},${px(top)}V${px(edge)}`)
      return (
        boxPath(inside(x + wedgeEnds.left * mm), top, inside(x + wedgeEnds.right * mm), edge) + ticks.join('')
      )
    })
    .join('')
}

/** The middles of the rockers, about which they turn. */
const pivots = (layout: ChainLayout): string =>
  allColumns.map((column) => ring(rockerX(layout, column), layout.pivot, 1.8)).join('')

/** The plate through whose slots the rods go down. */
const plate = (layout: ChainLayout): string => {
  // Slots as they are in the training machine: long enough for its full throw.
  const travel = dimensions.ratio * dimensions.sweepThrow * perMm(layout)
  const slots = allColumns.flatMap((column) => [
    rockerX(layout, column) - 2,
    rockerX(layout, column) + travel + 2,
  ])
  const edges = [layout.reader - 8, ...slots, layout.reader + 24 * layout.pitch + 8]
  let path = ''
  for (let n = 0; n + 1 < edges.length; n += 2)
    path += `M${px(entryAt(edges, n))},${layout.plate}H${px(entryAt(edges, n + 1))}`
  return path
}

/** A leg of a pin, from its tip at a height in mm down to the rocker's top, pushed to the left by so many pixels. */
const legShape = (layout: ChainLayout, column: Column, height: number, left: number): string => {
  const foot = layout.pivot - armOf(layout) + 5
  return `M${px(columnX(layout, column) - left)},${px(levelY(layout, height))}V${px(foot)}`
}

/** Pins, sweep and rockers, from the front: a leg that is pushed leaves the leg behind it, under the card, in sight. */
export const drawReader = (root: Group, view: ChainView): void => {
  const { layout, frame } = view
  const band = drawGroup(root, 'reader-band')
  const right = layout.reader + 24 * layout.pitch
  const y = px(levelY(layout, frame.condition.sweepEdge))
  drawShape(band, 'path', 'reference', {
    d: `M${layout.reader - 14},${y}H${right + 14}`,
  })
  drawShape(band, 'path', 'belt', {
    d: `M${layout.reader - 14},${px(levelY(layout, beltHigh))}H${right + 14}`,
    'data-part': 'belt',
  })
  drawShape(band, 'path', 'back-legs', {
    d: allColumns
      .filter((column) => measureOfColumn(frame.pinLeans, column) > 0)
      .map((column) => legShape(layout, column, measureOfColumn(frame.pinHeights, column), 0))
      .join(''),
  })
  drawShape(band, 'path', 'section', { d: cardSection(view), 'data-part': 'card' })
  drawShape(band, 'path', 'tooth', {
    d: sweepShape(view),
    'data-look': frame.condition.beltOff ? 'clear' : '',
    'data-broken': view.broken.has('sweep') || view.broken.has('belt') ? 'broken' : '',
    'data-part': 'sweep',
  })
  const mm = perMm(layout)
  drawShapes(band, 'path', 'pin', allColumns, (column) => {
    const height = measureOfColumn(frame.pinHeights, column)
    const left = measureOfColumn(frame.pinLeans, column) * mm
    return {
      d: keyed(keyOf(height, left), () => legShape(layout, column, height, left)),
      'data-part': `pin.${column}`,
      'data-high': height > view.frame.condition.dimensions.sweepEdge ? 'high' : 'low',
      'data-push': left > 0 ? 'push' : '',
      'data-broken': view.broken.has(`pin.${column}`) ? 'broken' : '',
    }
  })
  drawShapes(band, 'path', 'rocker', allColumns, (column) => {
    const out = measureOfColumn(frame.rockerOuts, column) * mm
    return {
      'data-part': `rocker.${column}`,
      'data-broken': view.broken.has(`rocker.${column}`) ? 'broken' : '',
      'data-push': out > 0 ? 'push' : '',
      d: keyed(out, () => rockerShape(layout, column, out)),
    }
  })
  drawShape(band, 'path', 'pivots', { d: keyed('', () => pivots(layout)) })
  drawShape(band, 'path', 'rod-plate', { d: keyed('', () => plate(layout)) })
}
