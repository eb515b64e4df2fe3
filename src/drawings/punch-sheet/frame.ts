import { dimensions } from '../../mechanism/dimensions.ts'
import type { SheetPart } from './part.ts'
import { edge, length, type PaperName, papers } from './settings.ts'
import { line, type SheetShape, words } from './shape.ts'
import { withUnit } from '../../words/lists.ts'

/** The ruler's length, mm. */
const rulerLength = 100

/** The most characters of a title: more would run over the paper's edge. */
const titleCharacters = 44

/** A ruler to measure a printed sheet by, with a tick every 10 mm. */
export const drawRuler = (paper: PaperName): SheetShape[] => {
  const y = papers[paper].height - edge - 6
  const ticks = Array.from({ length: rulerLength / 10 + 1 }, (_, n) => n * 10)
  return [
    line('ruler', edge, y, edge + rulerLength, y),
    ...ticks.map((mm) => line('ruler', edge + mm, y, edge + mm, y - (mm % 50 === 0 ? 3 : 2))),
    words(withUnit(rulerLength, 'mm'), edge + rulerLength + 2, y, 3),
    words(
      `If this line is not ${withUnit(rulerLength, 'mm')} long, the printer has scaled the page: print it at its true size.`,
      edge,
      y + 5,
      3,
    ),
  ]
}

const rowsWords = ({ lines, card }: SheetPart): string => {
  const own = lines.filter(({ isRepeat }) => !isRepeat)
  const [first, last] = [own[0]?.row, own.at(-1)?.row]
  if (first === undefined || last === undefined) return 'the first rows again, for the loop'
  return first === last ? `row ${first} of ${card.length}` : `rows ${first} to ${last} of ${card.length}`
}

/** What is above the card. */
export const drawNotes = (part: SheetPart, title: string): SheetShape[] => {
  const { settings, page, pages } = part
  const { columnPitch, rowPitch } = settings
  const characters = Array.from(title)
  const name =
    characters.length > titleCharacters ? `${characters.slice(0, titleCharacters).join('')}...` : title
  const small = 2.8
  return [
    words(name, edge, edge + 4, 4),
    words(
      `Page ${page} of ${pages}, ${rowsWords(part)}. Row 1 is read first; rows count from the bottom up.`,
      edge,
      edge + 9,
      small,
    ),
    words(
      `Holes ${withUnit(length(dimensions.hole), 'mm')} wide, ${withUnit(columnPitch, 'mm')} from column to column, ${withUnit(rowPitch, 'mm')} from row to row. Illustrative pitch: measure your own card.`,
      edge,
      edge + 13,
      small,
    ),
    words(
      'Column 1 is on the left, as this site draws cards. The holes along the edges are not drawn: copy them from a card that fits.',
      edge,
      edge + 17,
      small,
    ),
  ]
}
