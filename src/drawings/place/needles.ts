import { dimensions } from '../../mechanism/dimensions.ts'
import { type Mark, needleMark } from '../chain/marks.ts'
import { drawHit } from './hit.ts'
import { along } from './layout.ts'
import { edge, face } from './projection.ts'
import type { View } from './view.ts'
import { type Group, drawShapes, drawGroup } from '../shared/svg.ts'

const kinds = ['out', 'ahead', 'set', 'pressed', 'plain', 'selected', 'missed', 'extra', 'unmoved'] as const

/** Depth of a needle's butt: a selected needle stands nearer, a plain one further back. */
export const buttDepth = (view: View, index: number): number =>
  view.layout.butt - (view.frame.needleTravels[index] ?? 0) * view.layout.moved

/** The part of the bed on which the needles lie. */
const zoneOf = ({ layout }: View): string => {
  const [x0, x1] = [along(layout, 0), along(layout, dimensions.needles - 1)]
  return face(layout, [x0, layout.hook, 0], [x1, layout.hook, 0], [x1, layout.tail, 0], [x0, layout.tail, 0])
}

/** Every needle of the bed with its butt: one path a kind. */
export const drawNeedles = (root: Group, view: View): void => {
  const { layout, frame } = view
  const empty = (): Record<Mark, string> =>
    Object.fromEntries(kinds.map((kind) => [kind, ''])) as Record<Mark, string>
  const [stems, butts] = [empty(), empty()]
  const tall = layout.deckHigh * 0.62
  for (let index = 0; index < dimensions.needles; index++) {
    const mark = needleMark(frame, index)
    const x = along(layout, index)
    const y = buttDepth(view, index)
    const moved = y - layout.butt
    stems[mark] += edge(
      layout,
      [x, layout.hook + moved, 0],
      [x, Math.min(layout.tail + moved, layout.deck), 0],
    )
    if (frame.condition.needleGone[index]) continue
    const down = (frame.buttHeights[index] ?? 0) * layout.moved
    butts[mark] += edge(layout, [x, y, 0], [x, y, Math.max(1, tall + down)])
  }
  const band = drawGroup(root, 'needles', { 'data-part': 'needle' })
  drawHit(band, zoneOf(view))
  drawShapes(drawGroup(band, 'stems'), 'path', 'stem-line', kinds, (kind) => ({
    'data-mark': kind,
    d: stems[kind],
  }))
  drawShapes(drawGroup(band, 'butts'), 'path', 'butt-line', kinds, (kind) => ({
    'data-mark': kind,
    d: butts[kind],
  }))
}
