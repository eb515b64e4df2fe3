import { needleName } from '../../mechanism/bed.ts'
import { cams } from '../../mechanism/dimensions.ts'
import { type Needle, ofNeedle } from '../../mechanism/indices.ts'
import { hasKnitted } from '../../mechanism/fabric.ts'
import { drawByLook, emptyPaths } from '../shared/by-look.ts'
import { carriageHalf } from '../shared/cams.ts'
import { clipTo } from '../shared/definitions.ts'
import { needleMarks } from '../shared/needle-mark.ts'
import { buttLookOf, buttLooks, gateWalls, leadingWalls, needleOutline } from '../shared/needle-plan.ts'
import { px, rectangle } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import { carriageMiddle, needleX, perMm } from './layout.ts'
import { isBroken, markOf, type MendView } from './view.ts'

/** Where a needle's butt is when the needle is so far forward of the line, in mm. */
const standing = ({ layout }: MendView, index: Needle, travel: number): readonly [x: number, y: number] => [
  needleX(layout, index),
  layout.line + travel * perMm(layout),
]

/** The loop of yarn that hangs in a needle's hook, down to the row of fabric that the needle knitted last. */
const loop = ({ layout, frame, slide }: MendView, index: Needle, x: number, y: number): string => {
  const isBefore = !hasKnitted(frame.x, index, frame.pass.way)
  const top = layout.fabric + (isBefore ? 1 - slide : 0) * layout.rowHeight
  const half = layout.pitch * 0.25
  const hook = y + layout.hook - layout.line + 1
  return `M${px(x - half)},${px(top + 2)}L${px(x + 1)},${px(hook)}h3L${px(x + half)},${px(top + 2)}`
}

/** The carriage over the needles, and the walls under it that move their butts. */
const drawCarriage = (band: Group, view: MendView): void => {
  const { layout, frame } = view
  const { x, pass, condition } = frame
  const left = needleX(layout, x - pass.way * carriageMiddle - carriageHalf)
  drawShape(band, 'rect', 'carriage', {
    x: px(left),
    y: layout.tail - 22,
    width: px(2 * carriageHalf * layout.pitch),
    height: layout.hook - layout.tail + 40,
    rx: 8,
  })
  const place = {
    plan: layout,
    behindX: (behind: number) => needleX(layout, x - pass.way * behind),
    perMm: perMm(layout),
  }
  drawShape(band, 'path', 'walls', { d: gateWalls(place, condition) })
  drawShape(band, 'path', 'leading-walls', { d: leadingWalls(place) })
}

/** The needles from above under the passing carriage, where missed ones should be, and the names of those that are missed. */
export const drawNeedles = (root: Group, view: MendView): void => {
  const { layout, frame, indexes } = view
  const band = drawGroup(root, 'needle-band', { 'clip-path': clipTo(view.prefix, 'window') })
  const stems = emptyPaths(needleMarks)
  const butts = emptyPaths(buttLooks)
  const size = layout.shape === 'wide' ? { wide: 8, tall: 10 } : { wide: 6.5, tall: 8 }
  let ghosts = ''
  let loops = ''
  for (const index of indexes) {
    const mark = markOf(view, index)
    const [x, y] = standing(view, index, ofNeedle(frame.needleTravels, index))
    stems[mark] += needleOutline(layout, [x, y])
    butts[buttLookOf(mark)] += rectangle(x, y - size.tall / 2, size)
    loops += loop(view, index, x, y)
    if (mark === 'missed') ghosts += needleOutline(layout, standing(view, index, cams.selectedTravel))
  }
  drawShape(band, 'path', 'loops', { d: loops })
  drawShape(band, 'path', 'ghosts', { d: ghosts })
  drawByLook(drawGroup(band, 'stems'), 'needle', 'data-mark', needleMarks, stems)
  drawByLook(drawGroup(band, 'needle-butts'), 'needle-butt', 'data-look', buttLooks, butts)
  drawCarriage(band, view)
  const named = indexes.filter((index) => (index - layout.subject) % 8 === 0)
  const isBeside = (index: Needle): boolean => index === layout.subject && isBroken(view, index)
  drawShapes(root, 'text', 'needle-name', named, (index) => ({
    // Beside the line that leads up to its needle.
    x: px(needleX(layout, index) + (isBeside(index) ? 8 : 0)),
    y: layout.names,
    'data-mark': markOf(view, index) === 'missed' ? 'missed' : '',
    'data-kind': isBeside(index) ? 'beside' : '',
    text: markOf(view, index) === 'missed' ? `${needleName(index)} missed` : needleName(index),
  }))
}
