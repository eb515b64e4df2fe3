import { columnOfNeedle } from '../../mechanism/bed.ts'
import { isPunched } from '../../mechanism/card.ts'
import { cams } from '../../mechanism/dimensions.ts'
import { holeNow } from '../../mechanism/pin.ts'
import { markOfNeedle, measureOfNeedle } from '../../mechanism/indices.ts'
import { drawByLook, emptyPaths } from '../shared/by-look.ts'
import { hasChanged } from '../shared/memo.ts'
import { needleMark, needleMarks } from '../shared/needle-mark.ts'
import { px, rectangle } from '../shared/paths.ts'
import { drawShape, type Group, write } from '../shared/svg.ts'
import { foremost, perMm } from './layout.ts'
import { type FabricView, needleX, stitchX } from './view.ts'

const round = (x: number, y: number, radius: number): string =>
  `M${px(x - radius)},${px(y)}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0`

/** The card's row, laid out once for every 24 needles: each hole is over the needle that it works. */
export const drawCardRow = (band: Group, view: FabricView): void => {
  const { layout, frame, indexes } = view
  const { condition, pass } = frame
  const { row } = pass
  const paper = drawShape(band, 'rect', 'paper', {})
  if (!hasChanged(paper, [condition, row, indexes[0], indexes.length])) return
  write(paper, () => ({
    display: row === null ? 'none' : 'inline',
    x: px(stitchX(view, indexes[0] ?? 0)),
    y: layout.card - layout.cardHalf,
    width: px(indexes.length * layout.stitch.width),
    height: 2 * layout.cardHalf,
  }))
  const marks = emptyPaths(holeLooks)
  const radius = layout.stitch.width * 0.27
  for (const index of indexes) {
    if (row === null) break
    const column = columnOfNeedle(index, condition)
    const isHole = holeNow(condition, row, column)
    const isWrong = isHole !== isPunched(condition.card, row, column)
    const at = round(needleX(view, index), layout.card, isHole ? radius : 1)
    marks[isWrong ? 'wrong' : isHole ? 'hole' : 'none'] += at
    if (column === 1)
      marks.edge += `M${px(stitchX(view, index))},${layout.card - layout.cardHalf}v${2 * layout.cardHalf}`
  }
  drawByLook(band, 'card-mark', 'data-hole', holeLooks, marks)
}

const holeLooks = ['hole', 'none', 'wrong', 'edge'] as const

const needleShape = (view: FabricView, index: number, travel: number): string => {
  const { layout } = view
  const bend = layout.shape === 'wide' ? 3 : 2.2
  const y = layout.line + travel * perMm(layout)
  const x = needleX(view, index)
  return `M${px(x)},${px(y - layout.tail)}V${px(y + layout.hook - bend)}a${bend} ${bend} 0 0 0 ${2 * bend} 0v${-bend}`
}

/** The needles from above as the pass sets them out, the newest row of all: one path a kind. */
export const drawSetting = (band: Group, view: FabricView): void => {
  const { layout, frame } = view
  const [stems, butts] = [emptyPaths(needleMarks), emptyPaths(needleMarks)]
  const ghosts = { missed: '', extra: '' }
  const size = layout.shape === 'wide' ? { wide: 8, tall: 8 } : { wide: 6, tall: 6 }
  for (const index of view.indexes) {
    const mark = needleMark(frame, index)
    const travel = measureOfNeedle(frame.needleTravels, index)
    stems[mark] += needleShape(view, index, travel)
    if (!markOfNeedle(frame.condition.needleGone, index)) {
      const y = layout.line + travel * perMm(layout) - size.tall / 2
      butts[mark] += rectangle(needleX(view, index), y, size)
    }
    if (mark === 'missed' || mark === 'extra')
      ghosts[mark] += needleShape(view, index, mark === 'missed' ? cams.selectedTravel : -cams.plainTravel)
  }
  const right = layout.left + (layout.needles + 1) * layout.stitch.width
  drawShape(band, 'path', 'rest-line', { d: `M${layout.left},${layout.line}H${right}` })
  drawShape(band, 'path', 'due', { d: ghosts.missed + ghosts.extra })
  drawByLook(band, 'stem-of', 'data-mark', needleMarks, stems)
  drawByLook(band, 'butt-of', 'data-mark', needleMarks, butts)
  drawPresser(band, view)
}

/** Where the presser is, with the way it goes: behind it needles are set out again, ahead of it they wait to knit. */
const drawPresser = (band: Group, view: FabricView): void => {
  const { layout, frame } = view
  const { way } = frame.pass
  const x = needleX(view, frame.x)
  const top = layout.card + layout.cardHalf
  const size = layout.shape === 'wide' ? 5 : 4
  drawShape(band, 'path', 'presser-line', {
    d: `M0,${top + size}V${px(foremost(layout) + 5)}`,
    transform: `translate(${px(x)} 0)`,
  })
  drawShape(band, 'path', 'presser-flag', {
    d: `M${-size * way},${top + 1}l${2 * size * way},${size}l${-2 * size * way},${size}Z`,
    transform: `translate(${px(x)} 0)`,
  })
}
