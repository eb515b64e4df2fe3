import { columnsOfStrip, needleName, stripOfColumn, stripOfNeedle } from '../../mechanism/bed.ts'
import { fullShift } from '../../mechanism/rocker.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import {
  allColumns,
  allStrips,
  type Column,
  measureOfColumn,
  measureOfStrip,
  type Needle,
  type Strip,
  toNeedle,
} from '../../mechanism/indices.ts'
import { hatch } from '../shared/definitions.ts'
import { type Attributes, drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import {
  along,
  bodyLength,
  columnAlong,
  type PlaceLayout,
  readerEnds,
  stripDepth,
  stripHalf,
  stripHigh,
} from './layout.ts'
import { type Box, edge, endOf, face, frontOf, type Point, topOf } from './projection.ts'
import { rockerFoot } from './reader.ts'
import { brokenMark, drawPressArea, type PlaceView } from './view.ts'

/** How far a strip is shifted in the picture. */
export const shiftOf = (view: PlaceView, strip: Strip): number =>
  measureOfStrip(view.frame.stripShifts, strip) * view.layout.moved

const barOf = (view: PlaceView, strip: Strip, from: number, to: number): Box => {
  const { layout } = view
  const [y, half] = [stripDepth(layout, strip), stripHalf(layout)]
  return { from: [from, y - half, 0], to: [to, y + half, stripHigh(layout)] }
}

/** The bed's floor where the deck is cut away. */
const floorOf = (view: PlaceView): string => {
  const { layout } = view
  const [x0, x1] = [along(layout, layout.cut[0]), along(layout, layout.cut[1])]
  return face(layout, [x0, layout.deck, 0], [x1, layout.deck, 0], [x1, layout.back, 0], [x0, layout.back, 0])
}

/** What the styles go by: whether a strip moves, and whether it is broken. */
const stripLooks = (view: PlaceView, strip: Strip): Attributes => ({
  'data-broken': brokenMark(view, `strip.${strip}`),
  'data-push': shiftOf(view, strip) > 0 ? 'push' : '',
})

/** How high a catch reaches up, and how far its nose goes to the right. */
const catchHigh = (layout: PlaceLayout): number => stripHigh(layout) + layout.deckHigh * 0.5
const noseLong = (layout: PlaceLayout): number => layout.deckHigh * 0.35

/** The catch of a needle: up from its strip and forward; the whole of it as far as the butt, with a nose to the right. */
export const catchWay = (view: PlaceView, needle: Needle, isWhole: boolean): Point[] => {
  const { layout } = view
  const strip = stripOfNeedle(needle, view.frame.condition)
  const [y, z] = [stripDepth(layout, strip) - stripHalf(layout), stripHigh(layout)]
  const x = along(layout, needle) - dimensions.reach * layout.moved + shiftOf(view, strip)
  const high = catchHigh(layout)
  const end = isWhole ? layout.butt + layout.moved * 2 : y - layout.stripPitch * 0.45
  const arm: Point[] = [
    [x, y, z],
    [x, y, high],
    [x, end, high],
  ]
  return isWhole ? [...arm, [x + noseLong(layout), end, high]] : arm
}

/**
 * A strip's catches in the cut, one at every eighth needle. Those of a strip that is shifted are drawn as far as the
 * butts, the others are cut short, since all of them would hide what is beneath.
 */
const hooks = (view: PlaceView, strip: Strip, isBroken: boolean): string => {
  const { layout, frame } = view
  const [first, last] = layout.cut
  const isWhole = shiftOf(view, strip) > 0 && !isBroken
  let path = ''
  for (let index = first + 3; index < last - 1; index++) {
    const needle = toNeedle(index)
    if (
      stripOfNeedle(needle, frame.condition) !== strip ||
      view.broken.has(`catch.${needleName(needle)}`) !== isBroken
    )
      continue
    path += edge(layout, ...catchWay(view, needle, isWhole))
  }
  return path
}

/** The lugs on a strip, which the rods take along. */
const lugs = (view: PlaceView, strip: Strip): string => {
  const { layout } = view
  return columnsOfStrip(strip)
    .map((column): string => {
      const x = columnAlong(layout, column) + shiftOf(view, strip) + 1.6
      const [y, z] = [stripDepth(layout, strip), stripHigh(layout)]
      return edge(layout, [x, y, z], [x, y, z + layout.deckHigh * 0.55])
    })
    .join('')
}

/** The strips where the deck is cut away, the furthest first, with their catches. */
export const drawStrips = (root: Group, view: PlaceView): void => {
  const { layout } = view
  const [first, last] = layout.cut
  const band = drawGroup(root, 'strips-cut', { 'data-part': 'strip' })
  drawPressArea(band, floorOf(view))
  drawShapes(drawGroup(band, 'bars'), 'path', 'strip-bar', allStrips, (strip) => {
    const bar = barOf(view, strip, along(layout, first), along(layout, last + 0.015 * layout.needles))
    return {
      d: frontOf(layout, bar) + topOf(layout, bar),
      fill: view.broken.has(`strip.${strip}`) ? hatch(view.prefix, 'broken') : '',
      ...stripLooks(view, strip),
    }
  })
  drawShapes(drawGroup(band, 'catches'), 'path', 'hooks', allStrips, (strip) => ({
    d: hooks(view, strip, false),
    ...stripLooks(view, strip),
  }))
  drawShapes(drawGroup(band, 'lugs'), 'path', 'lug', allStrips, (strip) => ({
    d: lugs(view, strip),
    ...stripLooks(view, strip),
  }))
  drawShape(band, 'path', 'hooks-broken', {
    d: allStrips.map((strip) => hooks(view, strip, true)).join(''),
  })
}

/** The strips' ends, where they come out of the body at the right. */
export const drawStripEnds = (root: Group, view: PlaceView): void => {
  const { layout } = view
  const right = bodyLength(layout)
  const band = drawGroup(root, 'strip-ends', { 'data-part': 'strip' })
  drawShapes(band, 'path', 'strip-end', allStrips, (strip) => {
    const bar = barOf(view, strip, right, right + layout.pitch * 1.5 + shiftOf(view, strip))
    return {
      d: frontOf(layout, bar) + topOf(layout, bar) + endOf(layout, bar),
      ...stripLooks(view, strip),
    }
  })
}

/** A rod of the reader: from its rocker's lower end to over its strip, and down through its slot to the strip's lug. */
export const rodOf = (
  view: PlaceView,
  column: Column,
): { readonly rocker: Point; readonly head: Point; readonly foot: Point } => {
  const { layout, frame } = view
  const strip = stripOfColumn(column)
  const y = stripDepth(layout, strip)
  const rocker = rockerFoot(view, column)
  const followed = Math.min(measureOfColumn(frame.rockerOuts, column) * layout.moved, shiftOf(view, strip))
  return {
    rocker,
    head: [rocker[0], y, rocker[2]],
    foot: [columnAlong(layout, column) + followed, y, stripHigh(layout)],
  }
}

/** The plate under the reader, drawn as if of glass, with a slot for each of the 24 rods. */
export const drawRodPlate = (root: Group, view: PlaceView): void => {
  const { layout } = view
  const { plate, back } = layout.reader
  const [left, right] = readerEnds(layout)
  const front = layout.strip - layout.stripPitch * 0.6
  drawShape(root, 'path', 'rod-plate', {
    d: face(layout, [left, front, plate], [right, front, plate], [right, back, plate], [left, back, plate]),
  })
  drawShape(root, 'path', 'rod-slots', {
    d: allColumns
      .map((column) => {
        const [x, y] = [columnAlong(layout, column), stripDepth(layout, stripOfColumn(column))]
        return edge(layout, [x - 1, y, plate], [x + fullShift(dimensions) * layout.moved * 0.7, y, plate])
      })
      .join(''),
  })
}

/** Columns whose rods are in front of the row of pins, or behind it. */
export const columnsWhere = (view: PlaceView, where: 'front' | 'behind'): Column[] =>
  allColumns.filter(
    (column) =>
      stripDepth(view.layout, stripOfColumn(column)) < view.layout.reader.pins === (where === 'front'),
  )

/** The rods from the rockers down to the strips: 24 rods, 8 strips. In front, each from its rocker. */
export const drawRods = (root: Group, view: PlaceView, where: 'front' | 'behind'): void => {
  const { layout, frame } = view
  const band = drawGroup(root, `rods-${where}`, { 'data-part': 'rocker' })
  const columns = columnsWhere(view, where)
  const path = (column: Column): string => {
    const { rocker, head, foot } = rodOf(view, column)
    return where === 'front' ? edge(layout, foot, head, rocker) : edge(layout, foot, head)
  }
  drawShape(band, 'path', 'rod-edge', { d: columns.map(path).join('') })
  drawShapes(band, 'path', 'rod-line', columns, (column) => ({
    d: path(column),
    'data-push': measureOfColumn(frame.rockerOuts, column) > 0 ? 'push' : '',
    'data-broken': brokenMark(view, `rocker.${column}`),
  }))
}
