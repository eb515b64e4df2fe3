import { dimensions } from '../../mechanism/dimensions.ts'
import { phaseOf } from '../../words/figures/card.ts'
import { carriageHalf } from '../shared/cams.ts'
import { hatch } from '../shared/definitions.ts'
import { drawTexts, type Label } from '../shared/labels.ts'
import { dimensionLine, px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import { slideX } from './ends.ts'
import { bedX, type CardLayout } from './layout.ts'
import type { CardView, Side } from './view.ts'

const sides: readonly Side[] = ['left', 'right']

/** Places of the last needle in use and of the turn mark at one side, in needles. */
const ends = (view: CardView, side: Side): { needle: number; mark: number } => {
  const { first, last } = view.frame.condition.bed
  return side === 'left'
    ? { needle: first, mark: first - dimensions.turnMark }
    : { needle: last, mark: last + dimensions.turnMark }
}

/** The rod from the lever at a turn mark along the bed's rail and up to that side's pawl. */
const rodOf = (view: CardView, side: Side): string => {
  const { layout } = view
  const end = side === 'left' ? layout.leftEnd : layout.rightEnd
  const up = end.x + (side === 'left' ? -1 : 1) * slideX * end.scale
  const from = bedX(layout, ends(view, side).mark)
  return `M${px(from)},${layout.bedTop - 8}V${layout.rail}H${px(up)}V${px(end.y + 74 * end.scale)}`
}

/** The rods to both pawls, and the push in that of the pawl that acts. */
export const drawRods = (root: Group, view: CardView): void => {
  const isActing = view.isPast && view.steps > 0
  drawShape(root, 'path', 'amber', { d: isActing ? rodOf(view, view.side) : '' })
  drawShapes(drawGroup(root, 'turn-rods'), 'path', 'turn-rod', sides, (side) => ({ d: rodOf(view, side) }))
  drawShapes(drawGroup(root, 'turn-levers'), 'path', 'turn-lever', sides, (side) => {
    const x = bedX(view.layout, ends(view, side).mark)
    const lean = isActing && view.side === side ? (side === 'left' ? -4 : 4) : 0
    return {
      d: `M${px(x - 3.5)},${view.layout.bedTop - 9}h7L${px(x + lean)},${view.layout.bedTop + 6}Z`,
    }
  })
}

const needleTicks = (layout: CardLayout, from: number, to: number): string => {
  let path = ''
  for (let index = from; index <= to; index++)
    path += `M${px(bedX(layout, index))},${layout.bedTop + 5}V${layout.bedBottom - 5}`
  return path
}

/** The bed from above with its needles, both turn marks and how far they are from the last needle. */
export const drawBed = (root: Group, view: CardView): void => {
  const { layout, frame, whole } = view
  const { first, last } = frame.condition.bed
  const [left, right] = [bedX(layout, whole.first - 2), bedX(layout, whole.last + 2)]
  drawShape(root, 'path', 'bed-body', {
    d: `M${px(left)},${layout.bedTop}H${px(right)}V${layout.bedBottom}H${px(left)}Z`,
  })
  drawShape(root, 'path', 'bed-needles', { d: needleTicks(layout, first, last) })
  drawShape(root, 'path', 'bed-idle', {
    d: needleTicks(layout, whole.first, first - 1) + needleTicks(layout, last + 1, whole.last),
  })
  const below = layout.bedBottom + (layout.shape === 'wide' ? 30 : 21)
  drawShape(root, 'path', 'turn-mark', {
    d: sides
      .map((side) => `M${px(bedX(layout, ends(view, side).mark))},${layout.bedTop - 6}V${below + 3}`)
      .join(''),
  })
  drawShape(root, 'path', 'tip-line', {
    d: sides
      .map((side) => `M${px(bedX(layout, ends(view, side).needle))},${layout.bedBottom - 4}V${below + 3}`)
      .join(''),
  })
  drawShape(root, 'path', 'dimension', {
    d: sides
      .map((side) => {
        const { needle, mark } = ends(view, side)
        return dimensionLine(bedX(layout, needle), below, bedX(layout, mark), below)
      })
      .join(''),
  })
}

/** Where the next turn, or the one just made, leaves the card's row as it is: short of the mark. */
export const drawShort = (root: Group, view: CardView): void => {
  const { layout, frame } = view
  const { needle, mark } = ends(view, view.side)
  const turn = view.isPast ? frame.pass.pass : frame.pass.pass + 1
  const isShort = frame.condition.turns.short.has(turn)
  const [a, b] = [bedX(layout, needle), bedX(layout, mark)]
  const [from, to] = [Math.min(a, b), Math.max(a, b)]
  const isShown = isShort || phaseOf(frame) === 'beyond'
  drawShape(root, 'path', 'short-zone', {
    d: isShown ? `M${px(from)},${layout.bedTop - 1}H${px(to)}V${layout.bedBottom + 1}H${px(from)}Z` : '',
    'data-look': isShort ? 'broken' : '',
    fill: isShort ? hatch(view.prefix, 'broken') : '',
  })
}

/** The carriage at its true place, with its index at the presser's edge and its way. */
export const drawCarriage = (root: Group, view: CardView): void => {
  const { layout, frame } = view
  const x = bedX(layout, frame.x)
  const half = carriageHalf * layout.needle
  const { way } = frame.pass
  drawShape(root, 'rect', 'sledge', {
    x: px(x - half),
    y: layout.bedTop - 5,
    width: px(2 * half),
    height: layout.bedBottom - layout.bedTop + 10,
    rx: layout.shape === 'wide' ? 8 : 4,
    'data-part': 'carriage',
  })
  const middle = (layout.bedTop + layout.bedBottom) / 2
  const size = layout.shape === 'wide' ? 10 : 6
  drawShape(root, 'path', 'index', {
    d: `M${px(x)},${middle - size}l${way * size * 1.5},${size}l${-way * size * 1.5},${size}Z`,
  })
  drawShape(root, 'path', 'index-line', { d: `M${px(x)},${layout.bedTop - 5}V${layout.bedBottom + 5}` })
}

/** Names along the bed. */
export const drawBedWords = (root: Group, view: CardView): void => {
  const { layout } = view
  const isWide = layout.shape === 'wide'
  const y = layout.bedBottom + (isWide ? 46 : 33)
  const labels = sides.flatMap((side): Label[] => {
    const { needle, mark } = ends(view, side)
    const middle = (bedX(layout, needle) + bedX(layout, mark)) / 2
    const look = side === 'left' ? 'start' : 'end'
    const edge = side === 'left' ? 2 : layout.width - 2
    const out = side === 'left' ? -1 : 1
    const at = isWide ? middle + out * 24 : bedX(layout, mark) + out * 8
    const x = side === 'left' ? Math.max(edge, at) : Math.min(edge, at)
    return [{ text: isWide ? `${dimensions.turnMark} needles to the turn mark` : 'turn mark', x, y, look }]
  })
  drawTexts(root, 'bed-words', labels)
}
