import { dimensions } from '../../mechanism/dimensions.ts'
import { allColumns, type Column, ofColumn } from '../../mechanism/indices.ts'
import { holeNow, holePresented, holePunched } from '../../mechanism/pin.ts'
import { dueRow } from '../../mechanism/turn.ts'
import { drawByLook, emptyPaths } from '../shared/by-look.ts'
import { px, ring } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import { columnAt } from './curves.ts'
import { placeX } from './layout.ts'
import { isClear, placesIn, type TimingView } from './view.ts'

/** What the card shows in one column: a hole, none, one that is missing or added, or one that its pin does not meet. */
const kinds = ['hole', 'none', 'missing', 'added', 'unmet'] as const
type Kind = (typeof kinds)[number]

const kindOf = (view: TimingView, column: Column): Kind => {
  const { condition, pass } = view.frame
  if (pass.row === null) return 'none'
  const isHole = holeNow(condition, pass.row, column)
  const isDue = holePunched(condition, dueRow(condition, pass.pass), column)
  if (!isHole) return isDue ? 'missing' : 'none'
  if (!isDue) return 'added'
  return holePresented(condition, pass.row, column) ? 'hole' : 'unmet'
}

/** The card's row, repeated every 24 needles, with the numbers of its columns. */
export const drawCardLane = (scroll: Group, view: TimingView): void => {
  const { layout, frame } = view
  const columns = allColumns.map((column) => kindOf(view, column))
  const paths = emptyPaths(kinds)
  const isThere = frame.pass.row !== null
  for (const place of isThere ? placesIn(view.range) : []) {
    const kind = ofColumn(columns, columnAt(place, frame.condition))
    paths[kind] += ring(placeX(layout, place), layout.card, kind === 'none' ? 1.3 : layout.hole)
  }
  const repeats = placesIn(view.range).filter((place) => columnAt(place, frame.condition) === 1)
  drawShape(scroll, 'path', 'repeat', {
    d: repeats
      .map(
        (place) =>
          `M${px(placeX(layout, place - 0.5))},${layout.numbers - 8}V${layout.card + layout.hole + 3}`,
      )
      .join(''),
  })
  drawByLook(drawGroup(scroll, 'card-marks'), 'card-mark', 'data-kind', kinds, paths)
}

/** The columns' numbers: every one where there is room, else the first of each eight. */
export const drawColumnNumbers = (scroll: Group, view: TimingView): void => {
  const { layout, frame } = view
  const step = layout.shape === 'wide' ? 1 : dimensions.strips
  const shown = placesIn(view.range).filter(
    (place) => (columnAt(place, frame.condition) - 1) % step === 0 && isClear(view, place, 7),
  )
  drawShapes(scroll, 'text', 'column-number', shown, (place) => ({
    x: px(placeX(layout, place)),
    y: layout.numbers,
    'data-now': place === Math.round(frame.x) ? 'now' : '',
    text: String(columnAt(place, frame.condition)),
  }))
}
