import { sweepEnd } from '../../mechanism/sweep.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { allColumns, type Column, measureOfColumn } from '../../mechanism/indices.ts'
import { holePresented } from '../../mechanism/pin.ts'
import { boxPath, outline, polyline, px, ring } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group, keyed, keyOf } from '../shared/svg.ts'
import { type ChainLayout, columnX, liftMm, perMm } from './layout.ts'
import type { ChainView } from './view.ts'

/** Thickness of card as drawn, in mm of height. */
const cardThickness = 0.22

/** A level in mm above the pins' datum, as a height in the picture. */
export const levelY = (layout: ChainLayout, height: number): number =>
  layout.pinDatum - height * liftMm(layout)

/** Angle in radians at which a rocker leans when the sweep pushes its pin aside by `push` mm, to the right positive. */
const leanAngle = (layout: ChainLayout, push: number): number => {
  const arm = layout.pivot - levelY(layout, dimensions.sweepEdge + 0.5)
  return Math.asin(Math.min(0.7, (push * perMm(layout)) / arm))
}

/** A rocker: the sleeve in which its pin is, down to the point that works the rod, turned about its pivot. */
const sleeveShape = ({ layout }: ChainView, column: Column, turned: number): string => {
  const x = columnX(layout, column)
  const arm = layout.foot - layout.pivot
  const wide = layout.shape === 'wide' ? 3.4 : 2.6
  const [sine, cosine] = [Math.sin(turned), Math.cos(turned)]
  return polyline(
    [
      [-wide, -wide * 3] as const,
      [-wide, wide] as const,
      [0, arm] as const,
      [wide, wide] as const,
      [wide, -wide * 3] as const,
    ].map(([right, down]) => [x + right * cosine - down * sine, layout.pivot + right * sine + down * cosine]),
  )
}

/** The card edge-on: a bar with a gap wherever a pin goes through. */
const cardSection = (view: ChainView): string => {
  const { layout, frame } = view
  const { condition, pass } = frame
  if (pass.row === null) return ''
  const bottom = levelY(layout, dimensions.pinLow)
  const top = levelY(layout, dimensions.pinLow + cardThickness)
  const gap = (dimensions.hole / 2) * perMm(layout)
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

/** The sweep's tooth: a wedge whose flat edge brushes past the pins, with the belt that carries it. */
const sweepTooth = (view: ChainView): string => {
  const { layout, frame } = view
  const edge = levelY(layout, frame.condition.sweepEdge)
  const top = levelY(layout, 3.75)
  const half = sweepEnd * layout.pitch
  // In the narrow picture the reader's wall hides a tooth on its way in or out, for the names' sake.
  const room = layout.shape === 'wide' ? 2 * half : 8
  const [first, last] = [layout.reader - room, layout.reader + 24 * layout.pitch + room]
  const inside = (x: number): number => Math.max(first, Math.min(last, x))
  return [frame.sweepAt - 24, frame.sweepAt, frame.sweepAt + 24]
    .map((at) => columnX(layout, at))
    .filter((x) => x > layout.reader - half && x < layout.reader + 24 * layout.pitch + half)
    .map((x) =>
      outline([
        [inside(x - half), top],
        [inside(x + half), top],
        [inside(x + half * 0.4), edge],
        [inside(x - half * 0.4), edge],
      ]),
    )
    .join('')
}

/** The middles of the rockers, about which they turn. */
const pivots = (layout: ChainLayout): string =>
  allColumns.map((column) => ring(columnX(layout, column), layout.pivot, 1.8)).join('')

/** A pin from its rocker up to its tip at a height in mm, turned about the rocker's pivot. */
const pinShape = (layout: ChainLayout, column: Column, height: number, turned: number): string => {
  const at = (length: number): string => {
    const x = columnX(layout, column) + length * Math.sin(turned)
    return `${px(x)},${px(layout.pivot - length * Math.cos(turned))}`
  }
  return `M${at(layout.pivot - levelY(layout, height))}L${at(3)}`
}

/** Pins, sweep and rockers, from the side. */
export const drawReader = (root: Group, view: ChainView): void => {
  const { layout, frame } = view
  const band = drawGroup(root, 'reader-band')
  const right = layout.reader + 24 * layout.pitch
  const y = px(levelY(layout, frame.condition.sweepEdge))
  drawShape(band, 'path', 'reference', {
    d: `M${layout.reader - 14},${y}H${right + 14}`,
  })
  drawShape(band, 'path', 'belt', {
    d: `M${layout.reader - 14},${px(levelY(layout, 3.75))}H${right + 14}`,
    'data-part': 'belt',
  })

  const lean = (column: Column): number =>
    frame.pass.way * leanAngle(layout, measureOfColumn(frame.pinLeans, column))
  drawShapes(band, 'path', 'rocker', allColumns, (column) => ({
    'data-part': `rocker.${column}`,
    'data-broken': view.broken.has(`rocker.${column}`) ? 'broken' : '',
    'data-push': measureOfColumn(frame.rockerOuts, column) > 0 ? 'push' : '',
    d: keyed(lean(column), () => sleeveShape(view, column, lean(column))),
  }))
  drawShape(band, 'path', 'pivots', { d: keyed('', () => pivots(layout)) })
  drawShapes(band, 'path', 'pin', allColumns, (column) => {
    const height = measureOfColumn(frame.pinHeights, column)
    return {
      d: keyed(keyOf(height, lean(column)), () => pinShape(layout, column, height, lean(column))),
      'data-part': `pin.${column}`,
      'data-high': height > dimensions.sweepEdge ? 'high' : 'low',
      'data-push': measureOfColumn(frame.pinLeans, column) > 0 ? 'push' : '',
      'data-broken': view.broken.has(`pin.${column}`) ? 'broken' : '',
    }
  })
  drawShape(band, 'path', 'section', { d: cardSection(view), 'data-part': 'card' })
  drawShape(band, 'path', 'tooth', {
    d: sweepTooth(view),
    'data-broken': view.broken.has('sweep') || view.broken.has('belt') ? 'broken' : '',
    'data-part': 'sweep',
  })
}
