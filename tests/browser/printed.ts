import { getDocument, OPS, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs'
import type { Page } from './page.ts'

/** The papers that every page must do for, width and height in whole points. */
const papers = { A4: [595, 842], Letter: [612, 792] } as const
export type Format = keyof typeof papers
export const formats = Object.keys(papers) as Format[]

const pointsPerMm = 72 / 25.4

/** Width and height of something drawn, in mm. */
interface Size {
  readonly width: number
  readonly height: number
}

/** A printed page: its words in their order, and on demand the sizes of its paths. */
export interface Printed {
  readonly words: string
  readonly paths: () => Promise<readonly Size[]>
}

/** Where a page ends up by its transforms: scale across and down, as nothing here is turned. */
type Scale = readonly [number, number]

const pathsOf = async (page: PDFPageProxy): Promise<Size[]> => {
  const { fnArray, argsArray } = await page.getOperatorList()
  const sizes: Size[] = []
  const kept: Scale[] = []
  let scale: Scale = [1, 1]
  for (const [n, operation] of fnArray.entries()) {
    const args = argsArray[n] as unknown[]
    if (operation === OPS.save) kept.push(scale)
    if (operation === OPS.restore) scale = kept.pop() ?? [1, 1]
    if (operation === OPS.transform) scale = [scale[0] * Number(args[0]), scale[1] * Number(args[3])]
    if (operation !== OPS.constructPath || !args[2]) continue
    const [left = 0, bottom = 0, right = 0, top = 0] = Array.from(args[2] as ArrayLike<number>)
    sizes.push({
      width: Math.abs(((right - left) * scale[0]) / pointsPerMm),
      height: Math.abs(((top - bottom) * scale[1]) / pointsPerMm),
    })
  }
  return sizes
}

/** Prints what the browser shows, on a paper, and reads the PDF back. Throws where a page has another size. */
export const printOn = async (page: Page, format: Format): Promise<Printed[]> => {
  const bytes = await page.pdf({ format })
  const file = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise
  const pages: Printed[] = []
  for (let n = 1; n <= file.numPages; n++) {
    const sheet = await file.getPage(n)
    const { width, height } = sheet.getViewport({ scale: 1 })
    const size = [Math.floor(width), Math.floor(height)]
    if (size.join() !== papers[format].join())
      throw new Error(`page ${n} measures ${size.join(' by ')} points`)
    const { items } = await sheet.getTextContent()
    const words = items.map((item) => ('str' in item ? item.str : '')).join(' ')
    pages.push({ words: words.replace(/\s+/g, ' '), paths: () => pathsOf(sheet) })
  }
  return pages
}
