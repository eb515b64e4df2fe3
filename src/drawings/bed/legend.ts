import { px } from '../shared/paths.ts'
import { drawGroup, drawShapes, type Group } from '../shared/svg.ts'
import { type BedLayout, travels } from './layout.ts'
import { type BedMark, type BedSeen, isWrong, marks, needlesByMark } from './marks.ts'
import { needlePath, signPath } from './needles.ts'

const markWords: Readonly<Record<BedMark, string>> = {
  selected: 'selected, as asked',
  plain: 'plain, as asked',
  missed: 'missed',
  extra: 'selected, not asked for',
  unmoved: 'not moved',
}

/** A sign of the picture with what it means and how many needles it marks. */
interface Entry {
  readonly mark: BedMark
  readonly text: string
  readonly x: number
  readonly y: number
}

/** Both marks of a sound needle, and those of the three others that the picture shows, with their places. */
const entriesOf = (layout: BedLayout, bed: BedSeen): Entry[] => {
  const found = needlesByMark(bed)
  let x = layout.left
  let isOnNext = false
  return marks
    .filter((mark) => !isWrong(mark) || found[mark].length > 0)
    .map((mark) => {
      if (layout.shape === 'narrow' && isWrong(mark) && !isOnNext) {
        isOnNext = true
        x = layout.left
      }
      const text = `${found[mark].length} ${markWords[mark]}`
      const entry = { mark, text, x, y: layout.legend + (isOnNext ? 20 : 0) }
      x += textFrom(layout) + text.length * layout.letter + 22
      return entry
    })
}

/** Where an entry's text begins, behind its sign. */
const textFrom = ({ bend, sign }: BedLayout): number => 2 * bend + sign + 6

/** Draws what the signs mean. */
export const drawLegend = (root: Group, layout: BedLayout, bed: BedSeen): void => {
  const entries = entriesOf(layout, bed)
  const legend = drawGroup(root, 'seen-legend')
  // Shorter needles than in the lines, so that the legend is no taller than its text.
  const small: BedLayout = { ...layout, stem: 13 }
  const rest = ({ mark, y }: Entry): number =>
    y + 1 - (mark === 'unmoved' ? 0 : mark === 'plain' ? travels(layout).plain + 3 : travels(layout).selected)
  const stems = entries.filter(({ mark }) => mark !== 'missed')
  drawShapes(drawGroup(legend, 'meant-needles'), 'path', 'seen-needles', stems, (entry) => ({
    'data-mark': entry.mark,
    d: needlePath(small, entry.mark, entry.x, rest(entry)),
  }))
  const signs = entries.filter(({ mark }) => isWrong(mark))
  drawShapes(drawGroup(legend, 'meant-signs'), 'path', 'seen-signs', signs, (entry) => ({
    'data-mark': entry.mark,
    d: signPath(small, entry.mark, entry.x, rest(entry)),
  }))
  drawShapes(drawGroup(legend, 'meanings'), 'text', 'seen-meaning', entries, ({ mark, x, y, text }) => ({
    'data-mark': mark,
    x: px(x + textFrom(layout)),
    y: px(y),
    text,
  }))
}
