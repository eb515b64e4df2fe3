import type { Card } from '../../mechanism/card.ts'
import { bodyOf, cardWidth, type SheetSettings } from './settings.ts'

/** A row as it is on the sheet: its number on the card, and whether it is there a second time. */
interface Line {
  readonly row: number
  readonly isRepeat: boolean
}

/** A card's part on one page, and where it lies there, in mm. Its first row is the lowest. */
export interface SheetPart {
  readonly card: Card
  readonly lines: readonly Line[]
  readonly settings: SheetSettings
  /** From 1. */
  readonly page: number
  readonly pages: number
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  readonly columnX: (column: number) => number
  /** Height of the middle of the page's row, from 0 at the lowest. */
  readonly lineY: (n: number) => number
}

const linesOf = (card: Card, overlap: number): Line[] => [
  ...card.map((_, n) => ({ row: n + 1, isRepeat: false })),
  ...Array.from({ length: overlap }, (_, n) => ({ row: (n % card.length) + 1, isRepeat: true })),
]

/** How many rows go on a page. At both ends a row's distance is kept for the card's edge. */
const rowsPerPage = ({ paper, rowPitch }: SheetSettings): number => {
  const { top, bottom } = bodyOf(paper)
  return Math.floor((bottom - top) / rowPitch + 1e-9) - 1
}

const partOf = (
  card: Card,
  lines: readonly Line[],
  settings: SheetSettings,
  page: number,
  pages: number,
): SheetPart => {
  const body = bodyOf(settings.paper)
  const { rowPitch, columnPitch, margin } = settings
  const width = cardWidth(settings)
  const left = body.left + (body.right - body.left - width) / 2
  // The card ends a whole row after its outer rows, but pages join halfway between two rows.
  const below = page === 1 ? rowPitch : rowPitch / 2
  const above = page === pages ? rowPitch : rowPitch / 2
  const height = below + (lines.length - 1) * rowPitch + above
  const bottom = body.top + height
  return {
    card,
    lines,
    settings,
    page,
    pages,
    left,
    right: left + width,
    top: body.top,
    bottom,
    columnX: (column) => left + margin + (column - 1) * columnPitch,
    lineY: (n) => bottom - below - n * rowPitch,
  }
}

/** The parts of a card, page by page. */
export const partsOf = (card: Card, settings: SheetSettings): SheetPart[] => {
  const lines = linesOf(card, settings.overlap)
  const most = rowsPerPage(settings)
  const pages = Math.ceil(lines.length / most)
  return Array.from({ length: pages }, (_, n) =>
    partOf(card, lines.slice(n * most, (n + 1) * most), settings, n + 1, pages),
  )
}
