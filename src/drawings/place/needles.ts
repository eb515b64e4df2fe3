import { needlesIn } from '../../mechanism/bed.ts'
import { type Needle, markOfNeedle, measureOfNeedle } from '../../mechanism/indices.ts'
import { drawByLook, emptyPaths } from '../shared/by-look.ts'
import { needleMark, needleMarks } from '../shared/needle-mark.ts'
import { drawGroup, type Group } from '../shared/svg.ts'
import { along } from './layout.ts'
import { edge, face } from './projection.ts'
import { drawPressArea, type PlaceView } from './view.ts'

/** Depth of a needle's butt: a selected needle is nearer, a plain one further back. */
export const buttDepth = (view: PlaceView, index: Needle): number =>
  view.layout.butt - measureOfNeedle(view.frame.needleTravels, index) * view.layout.moved

/** The part of the bed on which the needles lie. */
const zoneOf = ({ layout, whole }: PlaceView): string => {
  const [x0, x1] = [along(layout, whole.first), along(layout, whole.last)]
  return face(layout, [x0, layout.hook, 0], [x1, layout.hook, 0], [x1, layout.tail, 0], [x0, layout.tail, 0])
}

/** Every needle of the bed with its butt: one path a kind. */
export const drawNeedles = (root: Group, view: PlaceView): void => {
  const { layout, frame } = view
  const [stems, butts] = [emptyPaths(needleMarks), emptyPaths(needleMarks)]
  const tall = layout.deckHigh * 0.62
  for (const index of needlesIn(view.whole)) {
    const mark = needleMark(frame, index)
    const x = along(layout, index)
    const y = buttDepth(view, index)
    const moved = y - layout.butt
    stems[mark] += edge(
      layout,
      [x, layout.hook + moved, 0],
      [x, Math.min(layout.tail + moved, layout.deck), 0],
    )
    if (markOfNeedle(frame.condition.needleGone, index)) continue
    const down = measureOfNeedle(frame.buttHeights, index) * layout.moved
    butts[mark] += edge(layout, [x, y, 0], [x, y, Math.max(1, tall + down)])
  }
  const band = drawGroup(root, 'needles', { 'data-part': 'needle' })
  drawPressArea(band, zoneOf(view))
  drawByLook(drawGroup(band, 'stems'), 'stem-line', 'data-mark', needleMarks, stems)
  drawByLook(drawGroup(band, 'butts'), 'butt-line', 'data-mark', needleMarks, butts)
}
