import { columnOfNeedle, stripOfColumn, stripOfNeedle } from '../../mechanism/bed.ts'
import { needleUnderPresser, sinceLetGo, isKept } from '../../mechanism/frame.ts'
import {
  type Column,
  measureOfColumn,
  measureOfStrip,
  ofNeedle,
  measureOfNeedle,
} from '../../mechanism/indices.ts'
import { sortedAfter } from '../../mechanism/dimensions.ts'
import { polyline, px } from '../shared/paths.ts'
import { drawGroup, drawShape, type Group } from '../shared/svg.ts'
import { columnX, needleX, perMm, stripY } from './layout.ts'
import { levelY, rockerX } from './reader-band.ts'
import { rodTravel, shiftPx, stripPiece } from './strip-band.ts'
import { type ChainView, slots } from './view.ts'

/** The ways that a push takes at this moment, as path texts: where it has come, and where it should have gone. */
interface Ways {
  push: string
  lost: string
}

/** From the hole down one column to its strip. */
const columnWay = (view: ChainView, column: Column, ways: Ways): void => {
  const { layout, frame } = view
  const lean = measureOfColumn(frame.pinLeans, column)
  if (lean <= 0) return
  const x = columnX(layout, column)
  const tip = levelY(layout, measureOfColumn(frame.pinHeights, column))
  const leg = x - lean * perMm(layout)
  const { top, bottom } = rodTravel(view, column)
  const [turns, head] = [rockerX(layout, column), 2 * layout.pivot - layout.foot]
  ways.push += polyline([
    [x, frame.pass.row === null ? tip : layout.cardRow],
    [leg, tip],
    [leg, head],
    ...(top > 0
      ? ([
          [turns - top, head],
          [turns, layout.pivot],
          [turns + top, layout.foot],
        ] as const)
      : []),
  ])
  if (top <= 0) return
  const strip = stripOfColumn(column)
  const joint = stripY(layout, strip)
  ways.push += polyline([
    [turns + top, layout.foot],
    [turns + top, layout.plate],
    [turns + bottom, top - bottom > 0.5 ? joint - 6 : joint],
  ])
  const { left, right } = stripPiece(view)
  if (top - bottom <= 0.5)
    ways.push += `M${px(left + shiftPx(view, strip))},${joint}H${px(right + shiftPx(view, strip))}`
  else ways.lost += `M${px(turns)},${joint}`
}

/** From the strip's catch down to the butt that is being let go, and on with the needles on their way. */
const needleWay = (view: ChainView, ways: Ways): void => {
  const { layout, frame } = view
  const index = needleUnderPresser(frame.condition, frame.x)
  if (index !== null) {
    const x = needleX(layout, view.from, index)
    const strip = stripOfNeedle(index, frame.condition)
    const y = stripY(layout, strip)
    const isOver = measureOfStrip(frame.stripShifts, strip) >= frame.condition.reach
    const down = `M${px(x)},${px(y + 4)}V${px(layout.rest + 10)}`
    const own = measureOfColumn(frame.pinLeans, columnOfNeedle(index, frame.condition))
    const wasAsked = ofNeedle(frame.pass.asked, index) === 'selected'
    if (isOver && isKept(frame.pass, index, 0)) ways.push += down
    else if (wasAsked && ofNeedle(frame.pass.came, index) === 'plain' && own > 0) {
      const from = columnX(layout, columnOfNeedle(index, frame.condition))
      ways.lost += `M${px(from)},${px(y)}H${px(x)}V${px(layout.rest + 10)}`
    }
  }
  for (const slot of slots(view)) {
    if (slot === null || ofNeedle(frame.pass.came, slot) !== 'selected') continue
    const since = sinceLetGo(frame.x, slot, frame.pass.way)
    if (since < 0 || since > sortedAfter(frame.condition.dimensions) + 1 || !isKept(frame.pass, slot, since))
      continue
    const x = px(needleX(layout, view.from, slot))
    const travel = measureOfNeedle(frame.needleTravels, slot) * perMm(layout)
    ways.push += `M${x},${px(layout.tail + travel)}V${px(layout.hook + travel - 4)}`
    if (since < sortedAfter(frame.condition.dimensions))
      ways.push += `M${x},${px(layout.rest + 2)}V${px(layout.buttBottom - 6)}`
  }
}

/** The push as it travels, under everything else; and, hatched, where a broken part stops it. */
export const drawPush = (root: Group, view: ChainView): void => {
  const band = drawGroup(root, 'push-band')
  const ways: Ways = { push: '', lost: '' }
  for (const { column } of view.frame.pass.drive.drives) columnWay(view, column, ways)
  needleWay(view, ways)
  drawShape(band, 'path', 'push', { d: ways.push })
  drawShape(band, 'path', 'lost', { d: ways.lost })
}
