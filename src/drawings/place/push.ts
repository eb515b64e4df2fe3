import { stripOfColumn, stripOfNeedle } from '../../mechanism/bed.ts'
import { needleUnderPresser, sinceLetGo, isKept } from '../../mechanism/frame.ts'
import { allStrips, measureOfColumn, type Strip, ofNeedle } from '../../mechanism/indices.ts'
import { sortedAfter } from '../../mechanism/dimensions.ts'
import { drawShape, type Group } from '../shared/svg.ts'
import { along, bodyLength, columnAlong, stripDepth, stripHigh } from './layout.ts'
import { buttDepth } from './needles.ts'
import { edge } from './projection.ts'
import { bowHigh, legAt, tipHigh } from './reader.ts'
import { catchWay, columnsWhere, rodOf, shiftOf } from './strips.ts'
import type { PlaceView } from './view.ts'

/** Draws the push as it travels, an amber underlay, in one of the places where it has to lie beneath other parts. */
const drawWay = (root: Group, name: string, path: string): void => {
  drawShape(root, 'path', `push-way way-${name}`, { d: path })
}

/** From the pins down their rods to the strips; the rods behind the pins lie behind the reader's inner wall. */
export const drawReaderPush = (root: Group, view: PlaceView, where: 'front' | 'behind'): void => {
  const { layout, frame } = view
  let path = ''
  for (const { column } of frame.pass.drive.drives) {
    if (measureOfColumn(frame.pinLeans, column) <= 0) continue
    if (where === 'front')
      path += edge(layout, legAt(view, column, bowHigh(layout)), legAt(view, column, tipHigh(view, column)))
    if (!columnsWhere(view, where).includes(column) || measureOfColumn(frame.rockerOuts, column) <= 0)
      continue
    const { rocker, head, foot } = rodOf(view, column)
    path +=
      where === 'front'
        ? edge(layout, [columnAlong(layout, column), rocker[1], layout.reader.pivot], rocker, head, foot)
        : edge(layout, head, foot)
  }
  drawWay(root, `reader-${where}`, path)
}

/** Strips that are pushed now, and not only stuck where they are. */
const pushedStrips = (view: PlaceView): Strip[] => {
  const { frame } = view
  const pushed = frame.pass.drive.drives
    .filter(({ column }) => measureOfColumn(frame.rockerOuts, column) > 0)
    .map(({ column }) => stripOfColumn(column))
  return allStrips.filter((strip) => pushed.includes(strip) && shiftOf(view, strip) > 0)
}

/** Along the pushed strips, in the cut or through the deck. */
export const drawStripPush = (root: Group, view: PlaceView, where: 'cut' | 'deck'): void => {
  const { layout } = view
  const [first, last] = [along(layout, layout.cut[0]), along(layout, layout.cut[1])]
  const spans: readonly (readonly [number, number, number])[] =
    where === 'cut'
      ? [[first, last, stripHigh(layout) / 2]]
      : [
          [0, first, layout.deckHigh],
          [last, bodyLength(layout), layout.deckHigh],
        ]
  drawWay(
    root,
    `strips-${where}`,
    pushedStrips(view)
      .flatMap((strip) => {
        const y = stripDepth(layout, strip)
        return spans.map(([from, to, z]) => edge(layout, [from, y, z], [to, y, z]))
      })
      .join(''),
  )
}

/** From the catch to the butt that it holds as the presser lets go, and on with the needles that the gates lead. */
export const drawNeedlePush = (root: Group, view: PlaceView): void => {
  const { layout, frame } = view
  const { pass, condition } = frame
  let path = ''
  const index = needleUnderPresser(condition, frame.x)
  if (index !== null && isKept(pass, index, 0) && shiftOf(view, stripOfNeedle(index, condition)) > 0) {
    path += edge(layout, ...catchWay(view, index, true))
  }
  for (let needle = condition.bed.first; needle <= condition.bed.last; needle++) {
    const since = sinceLetGo(frame.x, needle, pass.way)
    if (
      !isKept(pass, needle, since) ||
      ofNeedle(pass.came, needle) !== 'selected' ||
      since < 0 ||
      since > sortedAfter(condition.dimensions)
    )
      continue
    const x = along(layout, needle)
    const moved = buttDepth(view, needle) - layout.butt
    path += edge(layout, [x, layout.tail + moved, 0], [x, layout.hook + moved, 0])
  }
  drawWay(root, 'needles', path)
}
