import { needleName, stripOfColumn, stripOfNeedle } from '../../mechanism/bed.ts'
import { fullShift } from '../../mechanism/rocker.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import {
  allColumns,
  allStrips,
  type Column,
  measureOfColumn,
  measureOfStrip,
  type Strip,
  toNeedle,
} from '../../mechanism/indices.ts'
import { hatch } from '../shared/definitions.ts'
import { type Attributes, drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import { along, bodyLength, columnAlong, stripDepth, stripHalf, stripHigh } from './layout.ts'
import { type Box, edge, endOf, face, frontOf, type Point, topOf } from './projection.ts'
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

/** A strip's catches in the cut: small hooks at every eighth needle, that reach to the right when they cover a butt. */
const hooks = (view: PlaceView, strip: Strip, isBroken: boolean): string => {
  const { layout } = view
  const [first, last] = layout.cut
  const [y, z] = [stripDepth(layout, strip) - stripHalf(layout), stripHigh(layout)]
  const tall = layout.deckHigh * 0.55
  let path = ''
  for (let index = first + 3; index < last - 1; index++) {
    if (
      stripOfNeedle(toNeedle(index)) !== strip ||
      view.broken.has(`catch.${needleName(toNeedle(index))}`) !== isBroken
    )
      continue
    const x = along(layout, index) - dimensions.reach * layout.moved + shiftOf(view, strip)
    path += edge(layout, [x, y, z], [x, y, z + tall], [x + tall * 0.8, y, z + tall])
  }
  return path
}

/** The strips where the deck is cut away, the furthest first, with their catches. */
export const drawStrips = (root: Group, view: PlaceView): void => {
  const { layout } = view
  const [first, last] = layout.cut
  const band = drawGroup(root, 'strips-cut', { 'data-part': 'strip' })
  drawPressArea(band, floorOf(view))
  drawShapes(drawGroup(band, 'bars'), 'path', 'strip-bar', allStrips, (strip) => {
    const bar = barOf(view, strip, along(layout, first), along(layout, last + 3))
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

/** A rod of the reader: its head under the rocker's arm, and its foot over the strip. */
export const rodOf = (view: PlaceView, column: Column): { readonly head: Point; readonly foot: Point } => {
  const { layout, frame } = view
  const strip = stripOfColumn(column)
  const [x, y] = [columnAlong(layout, column), stripDepth(layout, strip)]
  const down = measureOfColumn(frame.rockerOuts, column) * layout.moved
  const followed = Math.min(down, shiftOf(view, strip))
  const clear = fullShift * layout.moved
  return {
    head: [x, y, layout.reader.pivot - down],
    foot: [x, y, stripHigh(layout) + Math.max(0, clear - followed)],
  }
}

/** Columns whose rods are in front of the row of pins, or behind it. */
export const columnsWhere = (view: PlaceView, where: 'front' | 'behind'): Column[] =>
  allColumns.filter(
    (column) =>
      stripDepth(view.layout, stripOfColumn(column)) < view.layout.reader.pins === (where === 'front'),
  )

/** The rods from the rockers down to the strips: 24 rods, 8 strips. In front, each with the rocker's arm above it. */
export const drawRods = (root: Group, view: PlaceView, where: 'front' | 'behind'): void => {
  const { layout, frame } = view
  const band = drawGroup(root, `rods-${where}`, { 'data-part': 'rocker' })
  const columns = columnsWhere(view, where)
  const path = (column: Column): string => {
    const { head, foot } = rodOf(view, column)
    const pivot: Point = [head[0], layout.reader.pins, layout.reader.pivot]
    return where === 'front' ? edge(layout, foot, head, pivot) : edge(layout, foot, head)
  }
  drawShape(band, 'path', 'rod-edge', { d: columns.map(path).join('') })
  drawShapes(band, 'path', 'rod-line', columns, (column) => ({
    d: path(column),
    'data-push': measureOfColumn(frame.rockerOuts, column) > 0 ? 'push' : '',
    'data-broken': brokenMark(view, `rocker.${column}`),
  }))
}
