import { punchSheet, type SheetSettings } from '../drawings/punch-sheet/punch-sheet.ts'
import type { Card } from '../mechanism/card.ts'

/** A card over and over, as often as one page of the sheet to punch holds it. */
export const rowsOnSheet = (card: Card, settings: SheetSettings): Card => {
  let rows = [...card]
  for (;;) {
    const longer = [...rows, ...card]
    if (punchSheet(longer, settings, '').pages?.length !== 1) return rows
    rows = longer
  }
}
