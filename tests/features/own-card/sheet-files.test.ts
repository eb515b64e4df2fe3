import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, test } from 'vitest'
import { sheetPdf } from '@/features/own-card/sheet-pdf.ts'
import { sheetSvg } from '@/drawings/punch-sheet/sheet-svg.ts'
import { punchSheet, type SheetPage, usualSheet } from '@/drawings/punch-sheet/punch-sheet.ts'
import { parseHTML } from 'linkedom'

const pagesOf = (rows: number[], paper: 'A4' | 'Letter' = 'A4', title = 'Two rows'): readonly SheetPage[] => {
  const sheet = punchSheet(rows, { ...usualSheet, paper }, title)
  if (!sheet.pages) throw new Error(sheet.reason)
  return sheet.pages
}
const open = async (bytes: Uint8Array) => getDocument({ data: bytes, verbosity: 0 }).promise
const perMm = 72 / 25.4

describe('the sheet as PDF', () => {
  test.each([
    ['A4', 595.276, 841.89],
    ['Letter', 612, 792],
  ] as const)('has pages of %s', async (paper, width, height) => {
    const file = await open(await sheetPdf(pagesOf(new Array<number>(100).fill(1), paper), 'A trial'))
    expect(file.numPages).toBe(3)
    const [, , w, h] = (await file.getPage(2)).view
    expect(w).toBeCloseTo(width, 1)
    expect(h).toBeCloseTo(height, 1)
  })

  test('has its words, with a question mark for what the font lacks', async () => {
    const file = await open(await sheetPdf(pagesOf([1], 'A4', 'Ёлка “é”'), 'Ёлка'))
    const { items } = await (await file.getPage(1)).getTextContent()
    const words = items.map((item) => ('str' in item ? item.str : ''))
    expect(words).toContain('???? “é”')
    expect(words.join(' ')).toContain('If this line is not 100 mm long')
    expect(((await file.getMetadata()).info as { Title: string }).Title).toBe('Ёлка')
  })

  test('has a circle where the hole is, at its true size', async () => {
    const [page] = pagesOf([1])
    const hole = page!.shapes.find((shape) => shape.kind === 'circle' && shape.look === 'hole')
    if (hole?.kind !== 'circle') throw new Error('there is no hole')
    const file = await open(await sheetPdf([{ ...page!, shapes: [hole] }], ''))
    const { fnArray, argsArray } = await (await file.getPage(1)).getOperatorList()
    let [x, y] = [0, 0]
    let box: number[] = []
    for (const [n, operation] of fnArray.entries()) {
      const args = argsArray[n] as unknown[]
      if (operation === OPS.transform) [x, y] = [x + Number(args[4]), y + Number(args[5])]
      if (operation === OPS.constructPath) box = Array.from(args[2] as ArrayLike<number>)
    }
    const [left, bottom, right, top] = box as [number, number, number, number]
    expect(x + (left + right) / 2).toBeCloseTo(hole.x * perMm, 2)
    expect(y + (bottom + top) / 2).toBeCloseTo((297 - hole.y) * perMm, 2)
    expect(right - left).toBeCloseTo(3.5 * perMm, 2)
    expect(top - bottom).toBeCloseTo(3.5 * perMm, 2)
  })
})

describe('the sheet as SVG', () => {
  const svgOf = (text: string): Element => {
    const found = parseHTML(`<body>${text}</body>`).document.querySelector('svg')
    if (!found) throw new Error('there is no picture')
    return found
  }

  test('has its size in mm and one unit a millimetre', () => {
    const svg = svgOf(sheetSvg(pagesOf([1])[0]!))
    expect(svg.getAttribute('width')).toBe('210mm')
    expect(svg.getAttribute('height')).toBe('297mm')
    expect(svg.getAttribute('viewBox')).toBe('0 0 210 297')
    expect(svg.querySelectorAll('circle[fill="none"]')).toHaveLength(1 + usualSheet.overlap)
    expect(svg.querySelector('circle[fill="none"]')?.getAttribute('r')).toBe('1.75')
  })

  test('keeps its scale without the margin that the paper has already', () => {
    const svg = svgOf(sheetSvg(pagesOf([1])[0]!, 9))
    expect(svg.getAttribute('width')).toBe('192mm')
    expect(svg.getAttribute('height')).toBe('279mm')
    expect(svg.getAttribute('viewBox')).toBe('9 9 192 279')
  })

  test('shows a title as text, whatever it holds', () => {
    const title = '<script>&"\u0000\ud800'
    const text = sheetSvg(pagesOf([1], 'A4', title)[0]!)
    expect(text).toContain('>&lt;script&gt;&amp;&quot;  </text>')
    expect(svgOf(text).querySelector('script')).toBeNull()
  })
})
