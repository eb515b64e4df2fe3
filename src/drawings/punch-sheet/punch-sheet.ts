import type { Card } from '../../mechanism/card.ts'
import { drawEdges } from './edges.ts'
import { drawNotes, drawRuler } from './frame.ts'
import { drawHelpLines, drawHoles, drawNumbers } from './holes.ts'
import { partsOf } from './part.ts'
import { papers, type SheetSettings, sheetTrouble } from './settings.ts'
import type { SheetShape } from './shape.ts'

export { type PaperName, papers, sheetRanges, type SheetSettings, usualSheet } from './settings.ts'
export type { LineLook, SheetShape } from './shape.ts'

/** One printed page, in mm. */
export interface SheetPage {
  readonly width: number
  readonly height: number
  readonly shapes: readonly SheetShape[]
}

/** A sheet's pages in the order of the card's rows, or one sentence that says why there are none. */
export type Sheet =
  | { readonly pages: readonly SheetPage[] }
  | { readonly pages: null; readonly reason: string }

/** The sheet to punch a card from, at its true size, as pages of simple shapes. */
export const punchSheet = (card: Card, settings: SheetSettings, title: string): Sheet => {
  const reason = sheetTrouble(settings)
  if (reason !== null) return { pages: null, reason }
  const pages = partsOf(card, settings).map((part): SheetPage => ({
    ...papers[settings.paper],
    shapes: [
      ...drawHelpLines(part),
      ...drawHoles(part),
      ...drawNumbers(part),
      ...drawEdges(part),
      ...drawRuler(settings.paper),
      ...drawNotes(part, title),
    ],
  }))
  return { pages }
}
