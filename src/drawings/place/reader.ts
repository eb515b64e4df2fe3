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

/** The reader's inner wall behind the pins, and its top plate, through which they stand up; the plate is cut too. */
export const drawReaderBody = (root: Group, view: PlaceView): void => {
  const { layout } = view
  const { pins, legs, back, bottom, top } = layout.reader
  const [left, right] = readerEnds(layout)
  const [x0, x1] = [left + cheek(layout), right - cheek(layout)]
  const y = legs + 4
  drawShape(root, 'path', 'inner-wall', {
    d: face(layout, [x0, y, bottom], [x1, y, bottom], [x1, y, top], [x0, y, top]),
  })
  drawBox(root, view, 'plate', { from: [left, pins, top - plate(layout)], to: [right, back, top] }, 'front')
}

/** A pin's front leg at a height: the sweep pushes it to the left. */
export const legAt = (view: PlaceView, column: Column, high: number): Point => {
  const { layout, frame } = view
  const left = measureOfColumn(frame.pinLeans, column) * readerMm(layout)
  return [columnAlong(layout, column) - left, layout.reader.pins, high]
}

/** How far down a pin's legs go below the top plate: there the wire is bent from one to the other. */
export const bowHigh = (layout: PlaceLayout): number =>
  layout.reader.pivot + (layout.shape === 'wide' ? 9 : 6)

/** The row of pins between two heights. */
const rowOf = (layout: PlaceLayout, low: number, high: number): string => {
  const { pins } = layout.reader
  const [x0, x1] = [columnAlong(layout, 0.5), columnAlong(layout, dimensions.columns + 0.5)]
  return face(layout, [x0, pins, low], [x1, pins, low], [x1, pins, high], [x0, pins, high])
}

/** Height of a pin's tip in the picture. */
export const tipHigh = (view: PlaceView, column: Column): number =>
  levelHigh(view.layout, measureOfColumn(view.frame.pinHeights, column))

/** What is seen of a pin's front leg below the reader's top, or of its tip above it. */
const frontLeg = (view: PlaceView, column: Column, where: 'below' | 'above'): string => {
  const { layout } = view
  const { top } = layout.reader
  return where === 'below'
    ? edge(layout, legAt(view, column, bowHigh(layout)), legAt(view, column, top - plate(layout)))
    : edge(layout, legAt(view, column, top), legAt(view, column, tipHigh(view, column)))
}

/** A pin's back leg, and the bow to its front leg; or its tip, where that has come up through the card. */
const backLeg = (view: PlaceView, column: Column, where: 'below' | 'above'): string => {
  const { layout, frame } = view
  const { legs, top } = layout.reader
  const at = (high: number): Point => [columnAlong(layout, column), legs, high]
  const low = bowHigh(layout)
  if (where === 'below') return edge(layout, legAt(view, column, low), at(low), at(top - plate(layout)))
  const tip = tipHigh(view, column)
  const from = frame.pass.row === null ? top : cardLevel(layout)
  return tip > from + 0.3 ? edge(layout, at(from), at(tip)) : ''
}

/** The back legs of the pins with their bows, or their tips above the card. */
export const drawBackLegs = (root: Group, view: PlaceView, where: 'below' | 'above'): void => {
  const group = drawGroup(root, `backs-${where}`, { 'data-part': 'pin' })
  drawShapes(group, 'path', 'back-leg', allColumns, (column) => ({ d: backLeg(view, column, where) }))
}

/** The front legs of the pins below the reader's top, or above it. */
export const drawPins = (root: Group, view: PlaceView, where: 'below' | 'above'): void => {
  const { layout, frame } = view
  const group = drawGroup(root, `pins-${where}`, { 'data-part': 'pin' })
  if (where === 'below') drawPressArea(group, rowOf(layout, layout.reader.pivot, layout.reader.top))
  drawShapes(group, 'path', 'pin-line', allColumns, (column) => ({
    d: frontLeg(view, column, where),
    'data-push': measureOfColumn(frame.pinLeans, column) > 0 ? 'push' : '',
    'data-high':
      measureOfColumn(frame.pinHeights, column) > view.frame.condition.dimensions.sweepEdge ? 'high' : 'low',
    'data-broken': brokenMark(view, `pin.${column}`),
  }))
}

/** A rocker's lower end, where its rod begins: it goes to the right as the top goes to the left. */
export const rockerFoot = (view: PlaceView, column: Column): Point => {
  const { layout, frame } = view
  const { pins, pivot, bottom } = layout.reader
  const out = measureOfColumn(frame.rockerOuts, column) * readerMm(layout)
  return [columnAlong(layout, column) + out, pins, (pivot + bottom) / 2]
}

/** The rockers beside the pins' front legs, in their rail. */
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
  const wide = layout.column * 0.2
  drawShapes(group, 'path', 'rocker-arm', allColumns, (column) => {
    const x = columnAlong(layout, column)
    const out = measureOfColumn(frame.rockerOuts, column) * readerMm(layout)
    const [right, , foot] = rockerFoot(view, column)
    const head = 2 * pivot - foot
    return {
      d: face(
        layout,
        [x - out - wide, pins, head],
        [x - out + wide, pins, head],
        [x + wide, pins, pivot],
        [right + wide, pins, foot],
        [right - wide, pins, foot],
        [x - wide, pins, pivot],
      ),
      'data-push': out > 0 ? 'push' : '',
      'data-broken': brokenMark(view, `rocker.${column}`),
    }
  })
}
