import {
  appendBezierCurve,
  beginText,
  closePath,
  endText,
  fill,
  lineTo,
  moveText,
  moveTo,
  PDFContext,
  PDFHexString,
  type PDFOperator,
  PDFWriter,
  popGraphicsState,
  pushGraphicsState,
  setDashPattern,
  setFontAndSize,
  setLineWidth,
  showText,
  stroke,
  translate,
} from '@cantoo/pdf-lib'
import type { LineLook, SheetShape, SheetPage } from '../../drawings/punch-sheet/punch-sheet.ts'
import { hexCodes, widthOf } from './helvetica.ts'

/** Points, of which PDF counts 72 an inch, in a millimetre. */
const perMm = 72 / 25.4

/** How many objects are written before the page may do something else: as many as by the library itself. */
const objectsAtOnce = 50

/** Line widths in mm, and dashes. */
const strokes: Record<LineLook, { width: number; dash?: number[] }> = {
  cut: { width: 0.3 },
  join: { width: 0.25, dash: [3, 2] },
  thin: { width: 0.12 },
  ruler: { width: 0.25 },
}

/** How far the handles of a quarter of a circle are from its ends, in radii. */
const handle = (4 / 3) * (Math.SQRT2 - 1)

/** A circle of four curves round the origin, in points: every one of a size is the same text, which packs well. */
const circle = (radius: number): PDFOperator[] => {
  const quarter = (fromX: number, fromY: number, toX: number, toY: number): PDFOperator =>
    appendBezierCurve(
      radius * (fromX + handle * toX),
      radius * (fromY + handle * toY),
      radius * (toX + handle * fromX),
      radius * (toY + handle * fromY),
      radius * toX,
      radius * toY,
    )
  return [
    moveTo(radius, 0),
    quarter(1, 0, 0, 1),
    quarter(0, 1, -1, 0),
    quarter(-1, 0, 0, -1),
    quarter(0, -1, 1, 0),
    closePath(),
  ]
}

/** What draws one shape, in the black that a page begins with. PDF counts upwards from the lower left corner. */
const drawing = (shape: SheetShape, pageHeight: number): PDFOperator[] => {
  const x = (mm: number): number => mm * perMm
  const y = (mm: number): number => (pageHeight - mm) * perMm
  switch (shape.kind) {
    case 'circle':
      return [
        pushGraphicsState(),
        translate(x(shape.x), y(shape.y)),
        ...circle(shape.radius * perMm),
        ...(shape.look === 'hole' ? [setLineWidth(0.25 * perMm), setDashPattern([], 0), stroke()] : [fill()]),
        popGraphicsState(),
      ]
    case 'line': {
      const { width, dash = [] } = strokes[shape.look]
      const dashes = dash.map((length) => length * perMm)
      const [from, to] = [moveTo(x(shape.x1), y(shape.y1)), lineTo(x(shape.x2), y(shape.y2))]
      return [setLineWidth(width * perMm), setDashPattern(dashes, 0), from, to, stroke()]
    }
    case 'text': {
      const size = shape.size * perMm
      const back = { start: 0, middle: 0.5, end: 1 }[shape.anchor] * widthOf(shape.text, size)
      return [
        beginText(),
        setFontAndSize('F', size),
        moveText(x(shape.x) - back, y(shape.y)),
        showText(PDFHexString.of(hexCodes(shape.text))),
        endText(),
      ]
    }
  }
}

/**
 * The sheet's pages as the bytes of a PDF file, at their true size. Written with the library's parts for pages of shapes
 * only: what it has for documents of all kinds would be ten times as much to fetch.
 */
export const sheetPdf = async (pages: readonly SheetPage[], title: string): Promise<Uint8Array> => {
  const file = PDFContext.create()
  const font = file.obj({
    Type: 'Font',
    Subtype: 'Type1',
    BaseFont: 'Helvetica',
    Encoding: 'WinAnsiEncoding',
  })
  const tree = file.nextRef()
  const leaves = pages.map(({ width, height, shapes }) =>
    file.register(
      file.obj({
        Type: 'Page',
        Parent: tree,
        MediaBox: [0, 0, width * perMm, height * perMm],
        Resources: { Font: { F: font } },
        Contents: file.register(file.contentStream(shapes.flatMap((shape) => drawing(shape, height)))),
      }),
    ),
  )
  file.assign(tree, file.obj({ Type: 'Pages', Kids: leaves, Count: leaves.length }))
  file.trailerInfo.Root = file.register(file.obj({ Type: 'Catalog', Pages: tree }))
  file.trailerInfo.Info = file.register(file.obj({ Title: PDFHexString.fromText(title) }))
  return PDFWriter.forContext(file, objectsAtOnce).serializeToBuffer()
}
