import { needleName, stripOfColumn } from '../../mechanism/bed.ts'
import { holeClearance } from '../../mechanism/pin.ts'
import { needleAtPin } from '../../words/figures/sweep.ts'
import { overPin } from '../../words/figures/pins.ts'
import { millimetres } from '../../words/lists.ts'
import { drawBalloons } from '../shared/balloons.ts'
import { drawTexts, type Label } from '../shared/labels.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import { columnX, levelY, planY, rightOf } from './layout.ts'
import { legsX, springFoot } from './profile.ts'
import { beltHigh } from './section.ts'
import { pivotDepth } from './shapes.ts'
import type { PinsView } from './view.ts'

/** How far the card is out of place over the pin under the sweep, in words. */
const placeLabels = (view: PinsView): Label[] => {
  const { layout, focus, frame } = view
  const [x, y] = [rightOf(layout) + 9, planY(layout)]
  const off = Math.hypot(focus.side, focus.along)
  const clearance = holeClearance(frame.condition.dimensions)
  const isWide = layout.shape === 'wide'
  if (frame.pass.row === null) return [{ text: 'no card', x, y: y + 4, look: 'strong' }]
  const state: Label[] =
    off < 0.005
      ? [{ text: `${millimetres(clearance)} all round`, x, y: y + 26 }]
      : [
          { text: `off by ${millimetres(off)}`, x, y: y + 26, look: off > clearance ? 'bad' : 'strong' },
          { text: `${millimetres(clearance)} allowed`, x, y: y + 41 },
        ]
  if (!isWide) return off < 0.005 ? [] : state.map((label, n) => ({ ...label, x: x - 4, y: y - 4 + n * 14 }))
  return [
    { text: `hole ${millimetres(view.frame.condition.dimensions.hole)}`, x, y: y - 8 },
    { text: `pin ${millimetres(view.frame.condition.dimensions.pin)}`, x, y: y + 8 },
    ...state,
  ]
}

/** What the column under the sweep is doing, in a few short lines. */
const focusLabels = (view: PinsView): Label[] => {
  const { layout, focus, frame } = view
  const push = millimetres(Math.abs(focus.lean))
  const out = millimetres(focus.out)
  const over = overPin(frame, focus.column)
  const moving = focus.lean === 0 ? '' : 'moving'
  const needle = needleAtPin(frame)
  const at = needle === null ? '' : `, at its needle ${needleName(needle)}`
  if (layout.shape === 'narrow')
    return [
      { text: `column ${focus.column}${at}: push ${push}, rocker ${out}`, x: 4, y: 350, look: 'strong' },
    ]
  const [x, y] = [rightOf(layout) + 9, layout.datum + 62]
  return [
    { text: `column ${focus.column}`, x, y: y - 17, look: 'strong' },
    { text: needle === null ? '' : `at its needle ${needleName(needle)}`, x, y, look: 'strong' },
    { text: over, x, y: y + 17 },
    { text: `tip ${millimetres(focus.height)} high`, x, y: y + 34 },
    { text: `pushed ${push} left`, x, y: y + 51, look: moving },
    { text: `rocker gives ${out}`, x, y: y + 68, look: focus.out > 0 ? 'moving' : '' },
    { text: `to strip ${stripOfColumn(focus.column)}`, x, y: y + 85 },
  ]
}

/** Left edge of the names, beside their balloons. */
const nameX = 27

/** Both legs of the pin that is seen from the side. */
const profileLabels = (view: PinsView): Label[] => {
  const { front, back } = legsX(view)
  const { layout, focus } = view
  const y = levelY(layout, beltHigh) - 32
  return [
    { text: `pin ${focus.column}, from the side`, x: layout.width - 4, y: y - 20, look: 'strong end' },
    { text: 'front leg', x: front, y, look: 'middle' },
    { text: 'back leg', x: Math.min(back, layout.width - 26), y, look: 'middle' },
    { text: 'lift spring', x: layout.width - 4, y: levelY(layout, -springFoot) + 13, look: 'end' },
    {
      text: focus.hasCard ? 'card' : '',
      x: layout.width - 4,
      y: levelY(layout, view.frame.condition.dimensions.pinLow) + 16,
      look: 'end',
    },
  ]
}

const nameLabels = (view: PinsView): Label[] => {
  const { layout, frame } = view
  if (layout.shape === 'narrow')
    return [
      { text: 'back legs', x: rightOf(layout) + 5, y: layout.planTop + 8, look: 'strong' },
      { text: 'sweep', x: rightOf(layout) + 5, y: layout.legs - 14, look: 'strong' },
      { text: 'front legs', x: rightOf(layout) + 5, y: layout.legs + 24, look: 'strong' },
    ]
  const { row } = frame.pass
  return [
    { text: 'card', x: nameX, y: planY(layout) - 8, look: 'strong' },
    { text: row === null ? 'none in the reader' : `row ${row}, from above`, x: nameX, y: planY(layout) + 6 },
    { text: 'back legs', x: nameX, y: planY(layout) + 24, look: 'strong' },
    { text: 'under the card', x: nameX, y: planY(layout) + 38 },
    { text: 'sweep', x: nameX, y: layout.legs - 18, look: 'strong' },
    { text: view.sweep.isClear ? 'stands clear' : 'a wedge', x: nameX, y: layout.legs - 4 },
    { text: 'front legs', x: nameX, y: layout.legs + 22, look: 'strong' },
    { text: 'in slanted slots', x: nameX, y: layout.legs + 36 },
    { text: 'from the front', x: nameX, y: levelY(layout, beltHigh) - 8, look: 'strong' },
    { text: 'rockers', x: nameX, y: levelY(layout, -pivotDepth), look: 'strong' },
    { text: 'top left, rod right', x: nameX, y: levelY(layout, -pivotDepth) + 14 },
    { text: 'plate', x: nameX, y: levelY(layout, -5.3), look: 'strong' },
    { text: 'a slot for each rod', x: nameX, y: levelY(layout, -5.3) + 14 },
    ...profileLabels(view),
  ]
}

/** Numbers of the columns above the plan and of their strips below the rods. */
const drawNumbers = (root: Group, view: PinsView): void => {
  const { layout, columns } = view
  const shown = columns.filter(({ x }) => x > layout.left + 12 && x < rightOf(layout) - 12)
  drawShapes(drawGroup(root, 'column-numbers'), 'text', 'column-number', shown, ({ x, column }) => ({
    x: px(x),
    y: layout.numbers,
    'data-now': column === view.focus.column ? 'now' : '',
    text: String(column),
  }))
  const roomy = shown.filter(({ x }) => x > layout.left + 24 && x < rightOf(layout) - 24)
  drawShapes(drawGroup(root, 'strip-numbers'), 'text', 'column-number', roomy, ({ x, column }) => ({
    x: px(x),
    y: layout.rods + (layout.shape === 'wide' ? 16 : 0),
    display: layout.shape === 'wide' ? 'inline' : 'none',
    text: `to strip ${stripOfColumn(column)}`,
  }))
}

/** Names, numbers, readouts and balloons. */
export const drawLabels = (root: Group, view: PinsView): void => {
  const { layout, frame, first } = view
  drawNumbers(root, view)
  drawTexts(root, 'words', [...nameLabels(view), ...placeLabels(view), ...focusLabels(view)])
  const way = frame.pass.way
  const sweep = columnX(layout, first, view.sweep.at)
  const y = levelY(layout, beltHigh) - (layout.shape === 'wide' ? 11 : 9)
  const back = layout.left + (way === 1 ? 2 : 40)
  const front = rightOf(layout) - (way === 1 ? 40 : 2)
  const start = Math.min(front, Math.max(back, sweep - way * 19))
  drawShape(root, 'path', 'way-arrow', {
    display: view.sweep.isClear ? 'none' : 'inline',
    d: `M${px(start)},${px(y)}h${way * 38}m${-way * 7},-4l${way * 7},4l${-way * 7},4`,
  })
  drawBalloons(
    root,
    layout.shape === 'wide'
      ? [
          { number: 1, x: 11, y: planY(layout) - 6 },
          { number: 2, x: 11, y: planY(layout) + 24 },
          { number: 3, x: 11, y: layout.legs - 18 },
          { number: 2, x: 11, y: layout.legs + 22 },
          { number: 4, x: 11, y: levelY(layout, -pivotDepth) },
        ]
      : [],
  )
}
