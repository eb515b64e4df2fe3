import { at } from '../../mechanism/lookup.ts'
import { hasHole } from '../../mechanism/card.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { toColumn } from '../../mechanism/indices.ts'
import type { SheetPart } from './part.ts'
import { line, type SheetShape, words } from './shape.ts'

const { columns, strips, hole } = dimensions

/** Radius of the dot where there is no hole, mm. */
const dot = 0.2

/** Rings where to punch, and a dot where not, so that nothing has to be counted. */
export const drawHoles = ({ card, lines, columnX, lineY }: SheetPart): SheetShape[] =>
  lines.flatMap(({ row, isRepeat }, n) =>
    Array.from({ length: columns }, (_, c): SheetShape => {
      const isHole = hasHole(at(card, row - 1), toColumn(c + 1))
      return {
        kind: 'circle',
        look: isHole ? 'hole' : 'blank',
        x: columnX(c + 1),
        y: lineY(n),
        radius: isHole ? hole / 2 : dot,
        row,
        column: c + 1,
        isRepeat,
      }
    }),
  )

/** A number's height that keeps rows apart, mm. */
const numberSize = 2.5

/** Numbers of the rows at their left, and of the columns above the card. */
export const drawNumbers = ({ lines, left, top, columnX, lineY }: SheetPart): SheetShape[] => [
  ...lines.map(({ row, isRepeat }, n) =>
    words(isRepeat ? `${row} again` : String(row), left - 1.5, lineY(n) + 0.9, numberSize, 'end'),
  ),
  ...Array.from({ length: columns }, (_, c) =>
    words(String(c + 1), columnX(c + 1), top - 1.5, numberSize, 'middle'),
  ),
]

/** Thin lines between groups of as many columns as there are strips, and where the first rows come again. */
export const drawHelpLines = (part: SheetPart): SheetShape[] => {
  const { lines, left, right, columnX, lineY, settings } = part
  const half = settings.rowPitch / 2
  const groups = Array.from({ length: columns / strips - 1 }, (_, n) => columnX((n + 1) * strips + 0.5))
  const again = lines.findIndex(({ isRepeat }) => isRepeat)
  const y = lineY(again) + half
  return [
    ...groups.map((x) => line('thin', x, lineY(0) + half, x, lineY(lines.length - 1) - half)),
    ...(again > 0 ? [line('thin', left, y, right, y)] : []),
  ]
}
