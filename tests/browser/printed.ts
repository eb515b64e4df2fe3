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

/** A printed page: its words in their order, and on demand the sizes of its paths, and what its pictures show. */
export interface Printed {
  readonly words: string
  readonly paths: () => Promise<readonly Size[]>
  /** The words of its pictures for those who can't see them. */
  readonly labels: () => Promise<readonly string[]>
  /** The same of those pictures only of which something is drawn, which takes long to read. */
  readonly drawn: () => Promise<readonly string[]>
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

type StructTree = Awaited<ReturnType<PDFPageProxy['getStructTree']>>
type Tagged = StructTree['children'][number]

/** The pieces of a page's content in an element of it, as the page's text names them. */
const contentOf = (element: Tagged): string[] =>
  'children' in element ? element.children.flatMap(contentOf) : 'id' in element ? [element.id] : []

/** A picture's words for those who can't see it, and the pieces of its content. */
interface Labelled {
  readonly words: string
  readonly content: readonly string[]
}

const labelled = (element: Tagged): Labelled[] => {
  if (!('children' in element)) return []
  const { alt } = element as { alt?: string }
  return alt === undefined
    ? element.children.flatMap(labelled)
    : [{ words: alt, content: contentOf(element) }]
}

/** The pieces of a page's content in which anything is drawn, by their numbers. */
const drawnIn = async (page: PDFPageProxy): Promise<Set<number>> => {
  const { fnArray, argsArray } = await page.getOperatorList()
  const within: number[] = []
  const drawn = new Set<number>()
  for (const [n, operation] of fnArray.entries()) {
    if (operation === OPS.beginMarkedContent) within.push(-1)
    if (operation === OPS.beginMarkedContentProps) within.push(Number((argsArray[n] as unknown[])[1] ?? -1))
    if (operation === OPS.endMarkedContent) within.pop()
    if (operation === OPS.constructPath) for (const piece of within) drawn.add(piece)
  }
  return drawn
}

const picturesOf = async (page: PDFPageProxy): Promise<Labelled[]> => {
  const tree = (await page.getStructTree()) as StructTree | null
  return (tree?.children ?? []).flatMap(labelled)
}

const labelsOf = async (page: PDFPageProxy): Promise<string[]> =>
  (await picturesOf(page)).map(({ words }) => words)

const drawnOf = async (page: PDFPageProxy): Promise<string[]> => {
  const drawn = await drawnIn(page)
  const isDrawn = (piece: string): boolean => drawn.has(Number(piece.split('_mc')[1]))
  return (await picturesOf(page)).filter(({ content }) => content.some(isDrawn)).map(({ words }) => words)
}

/** Prints what the browser shows, on a paper, and reads the PDF back. Throws where a page has another size. */
export const printOn = async (page: Page, format: Format, pageRanges = ''): Promise<Printed[]> => {
  const bytes = await page.pdf({ format, pageRanges, tagged: true })
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
    pages.push({
      words: words.replace(/\s+/g, ' '),
      paths: () => pathsOf(sheet),
      labels: () => labelsOf(sheet),
      drawn: () => drawnOf(sheet),
    })
  }
  return pages
}
