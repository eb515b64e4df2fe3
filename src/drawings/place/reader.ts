import { dimensions } from '../../mechanism/dimensions.ts'
import { allColumns, type Column, measureOfColumn } from '../../mechanism/indices.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import { drawBox } from './bed.ts'
import { cardLevel } from './card.ts'
import { columnAlong, levelHigh, type PlaceLayout, readerEnds, readerMm } from './layout.ts'
import { edge, face, type Point } from './projection.ts'
import { brokenMark, drawPressArea, type PlaceView } from './view.ts'

const cheek = (layout: PlaceLayout): number => layout.column * 1.3
const plate = (layout: PlaceLayout): number => layout.deckHigh * 0.45

/** One of the two cheeks that carry the reader, cut along the row of pins. */
export const drawCheek = (root: Group, view: PlaceView, side: 'left' | 'right'): void => {
  const { layout } = view
  const { pins, back, top } = layout.reader
  const [left, right] = readerEnds(layout)
  const from = side === 'left' ? left : right - cheek(layout)
  drawBox(
    root,
    view,
    `cheek-${side}`,
    { from: [from, pins, 0], to: [from + cheek(layout), back, top] },
    'front',
  )
}

/** The reader's inner wall behind the pins, and its top plate, on which the card lies; the plate is cut too. */
export const drawReaderBody = (root: Group, view: PlaceView): void => {
  const { layout } = view
  const { pins, back, bottom, top } = layout.reader
  const [left, right] = readerEnds(layout)
  const [x0, x1] = [left + cheek(layout), right - cheek(layout)]
  const y = pins + 4
  drawShape(root, 'path', 'inner-wall', {
    d: face(layout, [x0, y, bottom], [x1, y, bottom], [x1, y, top], [x0, y, top]),
  })
  drawBox(root, view, 'plate', { from: [left, pins, top - plate(layout)], to: [right, back, top] }, 'front')
}

/** A pin as it is: from its rocker's pivot up to its tip, pushed aside by the sweep. */
export const pinAt = (view: PlaceView, column: Column, high: number): Point => {
  const { layout, frame } = view
  const { pins, pivot } = layout.reader
  const tip = levelHigh(layout, measureOfColumn(frame.pinHeights, column))
  const lean = frame.pass.way * measureOfColumn(frame.pinLeans, column) * readerMm(layout)
  return [columnAlong(layout, column) + (lean * (high - pivot)) / (tip - pivot), pins, high]
}

/** The row of pins between two heights. */
const rowOf = (layout: PlaceLayout, low: number, high: number): string => {
  const { pins } = layout.reader
  const [x0, x1] = [columnAlong(layout, 0.5), columnAlong(layout, dimensions.columns + 0.5)]
  return face(layout, [x0, pins, low], [x1, pins, low], [x1, pins, high], [x0, pins, high])
}

/** Height of a pin's tip in the picture. */
export const tipHigh = (view: PlaceView, column: Column): number =>
  levelHigh(view.layout, measureOfColumn(view.frame.pinHeights, column))

/** What is seen of a pin below the reader's top, or of its tip above the card. */
const pinLine = (view: PlaceView, column: Column, where: 'below' | 'above'): string => {
  const { layout, frame } = view
  if (where === 'below') {
    const top = layout.reader.top - plate(layout)
    return edge(layout, pinAt(view, column, layout.reader.pivot), pinAt(view, column, top))
  }
  const tip = tipHigh(view, column)
  const from = frame.pass.row === null ? layout.reader.top : cardLevel(layout)
  return tip > from + 0.3 ? edge(layout, pinAt(view, column, from), pinAt(view, column, tip)) : ''
}

/** The pins below the reader's top, or their tips above the card. */
export const drawPins = (root: Group, view: PlaceView, where: 'below' | 'above'): void => {
  const { layout, frame } = view
  const group = drawGroup(root, `pins-${where}`, { 'data-part': 'pin' })
  if (where === 'below') drawPressArea(group, rowOf(layout, layout.reader.pivot, layout.reader.top))
  drawShapes(group, 'path', 'pin-line', allColumns, (column) => ({
    d: pinLine(view, column, where),
    'data-push': measureOfColumn(frame.pinLeans, column) > 0 ? 'push' : '',
    'data-high': measureOfColumn(frame.pinHeights, column) > dimensions.sweepEdge ? 'high' : 'low',
    'data-broken': brokenMark(view, `pin.${column}`),
  }))
}

/** The rockers at the pins' feet, on their bar. */
export const drawRockers = (root: Group, view: PlaceView): void => {
  const { layout, frame } = view
  const group = drawGroup(root, 'rockers', { 'data-part': 'rocker' })
  const { pins, pivot, bottom } = layout.reader
  drawPressArea(group, rowOf(layout, bottom, pivot))
  drawShape(group, 'path', 'pivot-bar', {
    d: edge(
      layout,
      [columnAlong(layout, 0.2), pins, pivot],
      [columnAlong(layout, dimensions.columns + 0.8), pins, pivot],
    ),
  })
  const wide = layout.column * 0.3
  drawShapes(group, 'path', 'rocker-arm', allColumns, (column) => {
    const x = columnAlong(layout, column)
    const swing = -frame.pass.way * measureOfColumn(frame.rockerOuts, column) * readerMm(layout)
    const foot = (pivot + bottom) / 2
    return {
      d: face(
        layout,
        [x - wide, pins, pivot + wide],
        [x + wide, pins, pivot + wide],
        [x + swing, pins, foot],
      ),
      'data-push': measureOfColumn(frame.rockerOuts, column) > 0 ? 'push' : '',
      'data-broken': brokenMark(view, `rocker.${column}`),
    }
  })
}
