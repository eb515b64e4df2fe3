import type { SheetPart } from './part.ts'
import { line, type SheetShape, words } from './shape.ts'

/** Length of the marks at a join, mm. */
const mark = 3

/** Where the card goes on on another page: a dashed line, crosses at both edges to lay together, and words. */
const drawJoin = ({ left, right }: SheetPart, y: number, page: number, wordsY: number): SheetShape[] => [
  line('join', left, y, right, y),
  ...[left, right].flatMap((x) => [
    line('cut', x - mark, y, x + mark, y),
    line('cut', x, y - mark, x, y + mark),
  ]),
  words(`Cut here and join to page ${page}, edge to edge`, (left + right) / 2, wordsY, 2.5, 'middle'),
]

/** The card's outline: cut along it. */
export const drawEdges = (part: SheetPart): SheetShape[] => {
  const { left, right, top, bottom, page, pages } = part
  return [
    line('cut', left, bottom, left, top),
    line('cut', right, bottom, right, top),
    ...(page === 1
      ? [line('cut', left, bottom, right, bottom)]
      : drawJoin(part, bottom, page - 1, bottom + 3.6)),
    // The columns' numbers are between the line and its words.
    ...(page === pages ? [line('cut', left, top, right, top)] : drawJoin(part, top, page + 1, top - 4.8)),
  ]
}
