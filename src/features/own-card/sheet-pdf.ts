import { PDFDocument, type PDFFont, type PDFPage, rgb, StandardFonts } from '@cantoo/pdf-lib'
import type { LineLook, SheetShape, SheetPage } from '../../drawings/punch-sheet/punch-sheet.ts'

/** Points, of which PDF counts 72 an inch, in a millimetre. */
const perMm = 72 / 25.4

const ink = rgb(0, 0, 0)

/** Line widths in mm, and dashes. */
const strokes: Record<LineLook, { width: number; dash?: number[] }> = {
  cut: { width: 0.3 },
  join: { width: 0.25, dash: [3, 2] },
  thin: { width: 0.12 },
  ruler: { width: 0.25 },
}

/** A text in the characters that the font has; others become question marks. */
const inFont = (font: PDFFont, text: string): string => {
  const known = new Set(font.getCharacterSet())
  return Array.from(text, (mark) => (known.has(mark.codePointAt(0) ?? 0) ? mark : '?')).join('')
}

/** Draws one shape. PDF counts upwards from the lower left corner. */
const draw = (page: PDFPage, font: PDFFont, shape: SheetShape): void => {
  const x = (mm: number): number => mm * perMm
  const y = (mm: number): number => page.getHeight() - mm * perMm
  switch (shape.kind) {
    case 'circle':
      page.drawCircle({
        x: x(shape.x),
        y: y(shape.y),
        size: shape.radius * perMm,
        ...(shape.look === 'hole' ? { borderColor: ink, borderWidth: 0.25 * perMm } : { color: ink }),
      })
      return
    case 'line': {
      const { width, dash } = strokes[shape.look]
      page.drawLine({
        start: { x: x(shape.x1), y: y(shape.y1) },
        end: { x: x(shape.x2), y: y(shape.y2) },
        thickness: width * perMm,
        color: ink,
        ...(dash ? { dashArray: dash.map((length) => length * perMm) } : {}),
      })
      return
    }
    case 'text': {
      const size = shape.size * perMm
      const text = inFont(font, shape.text)
      const back = { start: 0, middle: 0.5, end: 1 }[shape.anchor] * font.widthOfTextAtSize(text, size)
      page.drawText(text, { x: x(shape.x) - back, y: y(shape.y), size, font, color: ink })
    }
  }
}

/** The sheet's pages as the bytes of a PDF file, at their true size. */
export const sheetPdf = async (pages: readonly SheetPage[], title: string): Promise<Uint8Array> => {
  const file = await PDFDocument.create()
  const font = await file.embedFont(StandardFonts.Helvetica)
  file.setTitle(title)
  for (const { width, height, shapes } of pages) {
    const page = file.addPage([width * perMm, height * perMm])
    for (const shape of shapes) draw(page, font, shape)
  }
  return file.save()
}
