import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  papers,
  punchSheet,
  type SheetShape,
  sheetRanges,
  type SheetPage,
  type SheetSettings,
  usualSheet,
} from '@/drawings/punch-sheet/punch-sheet.ts'
import { type Card, hasHole } from '@/mechanism/card.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { toColumn } from '@/mechanism/indices.ts'

type Circle = Extract<SheetShape, { kind: 'circle' }>
type Line = Extract<SheetShape, { kind: 'line' }>

const pagesOf = (
  card: Card,
  settings: SheetSettings = usualSheet,
  title = 'A trial',
): readonly SheetPage[] => {
  const sheet = punchSheet(card, settings, title)
  if (!sheet.pages) throw new Error(sheet.reason)
  return sheet.pages
}
const circles = ({ shapes }: SheetPage): Circle[] => shapes.filter((shape) => shape.kind === 'circle')
const lines = ({ shapes }: SheetPage): Line[] => shapes.filter((shape) => shape.kind === 'line')
const texts = ({ shapes }: SheetPage): string[] =>
  shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []))

const cards = fc.array(fc.integer({ min: 0, max: 0xffffff }), { minLength: 1, maxLength: 200, size: 'max' })
const within = (key: keyof typeof sheetRanges) => {
  const [least, most] = sheetRanges[key]
  return fc.integer({ min: least * 10, max: most * 10 }).map((tenths) => tenths / 10)
}
const settings: fc.Arbitrary<SheetSettings> = fc.record({
  columnPitch: within('columnPitch'),
  rowPitch: within('rowPitch'),
  margin: within('margin'),
  overlap: fc.integer({ min: 0, max: 10 }),
  paper: fc.constantFrom('A4', 'Letter'),
})
const striped = Array.from({ length: 120 }, (_, n) => (n % 2 === 0 ? 0xaaaaaa : 0x555555))

describe('the sheet to punch', () => {
  test('has every hole of every row once, and of each overlap row once more', () => {
    fc.assert(
      fc.property(cards, settings, (card, chosen) => {
        const sheet = punchSheet(card, chosen, 'A trial')
        if (!sheet.pages) return
        const found = sheet.pages
          .flatMap(circles)
          .filter(({ look }) => look === 'hole')
          .map(({ row, column, isRepeat }) => `${row} ${column} ${isRepeat}`)
        const expected = card.flatMap((holes, n) =>
          Array.from({ length: 24 }, (_, c) => c + 1)
            .filter((column) => hasHole(holes, toColumn(column)))
            .map((column) => `${n + 1} ${column} false`),
        )
        const again = Array.from({ length: chosen.overlap }, (_, n) => n % card.length).flatMap((n) =>
          Array.from({ length: 24 }, (_, c) => c + 1)
            .filter((column) => hasHole(card[n]!, toColumn(column)))
            .map((column) => `${n + 1} ${column} true`),
        )
        expect(found.sort()).toEqual([...expected, ...again].sort())
      }),
      { numRuns: 40 },
    )
  })

  test('has rows and columns at their pitch: 24 columns span 23 pitches', () => {
    const [page] = pagesOf([0xffffff, 0xffffff, 0])
    const first = circles(page!).filter(({ row, isRepeat }) => row === 1 && !isRepeat)
    const second = circles(page!).filter(({ row, isRepeat }) => row === 2 && !isRepeat)
    expect(first).toHaveLength(24)
    expect(first[23]!.x - first[0]!.x).toBeCloseTo(23 * usualSheet.columnPitch)
    expect(first[0]!.y - second[0]!.y).toBeCloseTo(usualSheet.rowPitch)
    expect(first[0]!.radius).toBe(dimensions.hole / 2)
  })

  test('keeps the margin from the outer holes to the cut line', () => {
    const [page] = pagesOf([0xffffff])
    const cuts = lines(page!).filter(({ look }) => look === 'cut')
    const left = Math.min(...cuts.map(({ x1 }) => x1))
    const right = Math.max(...cuts.map(({ x2 }) => x2))
    const row = circles(page!)
    expect(row[0]!.x - left).toBeCloseTo(usualSheet.margin)
    expect(right - row[23]!.x).toBeCloseTo(usualSheet.margin)
  })

  test('has a ruler of 100 mm on each page, and says what it is for', () => {
    for (const page of pagesOf(striped)) {
      const ruler = lines(page).filter(({ look }) => look === 'ruler')
      expect(Math.max(...ruler.map(({ x2 }) => x2)) - Math.min(...ruler.map(({ x1 }) => x1))).toBeCloseTo(100)
      expect(texts(page).join(' ')).toContain(
        'If this line is not 100\u00a0mm long, the printer has scaled the page',
      )
      expect(texts(page).join(' ')).toContain('Illustrative pitch: measure your own card.')
    }
  })

  test('has nothing outside the paper', () => {
    fc.assert(
      fc.property(cards, settings, fc.string({ maxLength: 90 }), (card, chosen, title) => {
        const sheet = punchSheet(card, chosen, title)
        if (!sheet.pages) return
        const { width, height } = papers[chosen.paper]
        for (const page of sheet.pages)
          for (const shape of page.shapes) {
            const box = boxOf(shape)
            const isInside = box[0] > 4 && box[1] > 4 && box[2] < width - 4 && box[3] < height - 4
            if (!isInside) throw new Error(`${JSON.stringify(shape)} leaves ${chosen.paper}`)
          }
      }),
      { numRuns: 30 },
    )
  })

  test('says on each page which it is, and shows where pages join', () => {
    const pages = pagesOf(striped)
    expect(pages.length).toBe(3)
    for (const [n, page] of pages.entries()) {
      expect(texts(page).join(' ')).toContain(`Page ${n + 1} of 3`)
      const joins = lines(page).filter(({ look }) => look === 'join')
      expect(joins).toHaveLength(n === 1 ? 2 : 1)
    }
    expect(texts(pages[0]!)).toContain('Cut here and join to page 2, edge to edge')
    expect(texts(pages[1]!)).toContain('Cut here and join to page 1, edge to edge')
  })

  test('joins pages halfway between two rows', () => {
    const [one, two] = pagesOf(striped)
    const last = Math.min(...circles(one!).map(({ y }) => y))
    const first = Math.max(...circles(two!).map(({ y }) => y))
    const joinOf = (page: SheetPage): number[] =>
      lines(page)
        .filter(({ look }) => look === 'join')
        .map(({ y1 }) => y1)
    expect(last - joinOf(one!)[0]!).toBeCloseTo(usualSheet.rowPitch / 2)
    expect(Math.max(...joinOf(two!)) - first).toBeCloseTo(usualSheet.rowPitch / 2)
  })

  test('names each row at its left, the overlap as such', () => {
    const [page] = pagesOf([1, 2, 3])
    expect(texts(page!).slice(0, 5)).toEqual(['1', '2', '3', '1 again', '2 again'])
  })

  test('repeats a short card as often as the overlap asks', () => {
    const [page] = pagesOf([1], { ...usualSheet, overlap: 3 })
    expect(texts(page!).slice(0, 4)).toEqual(['1', '1 again', '1 again', '1 again'])
  })

  test.each([
    [{ columnPitch: 3.5 }, 'The distance from column to column must be 4 to 10\u00a0mm.'],
    [{ columnPitch: NaN }, 'The distance from column to column must be 4 to 10\u00a0mm.'],
    [{ rowPitch: 99 }, 'The distance from row to row must be 4 to 12\u00a0mm.'],
    [{ margin: -1 }, 'The margin must be 3 to 40\u00a0mm.'],
    [{ overlap: 11 }, 'The overlap must be 0 to 10 rows.'],
    [{ overlap: 1.5 }, 'The overlap must be a whole number of rows.'],
    [
      { columnPitch: 9 },
      'With these measures the card is 237\u00a0mm wide, but A4 paper leaves 179\u00a0mm for it.',
    ],
  ])('with %o is refused: %s', (change, reason) => {
    expect(punchSheet([1], { ...usualSheet, ...change }, '')).toEqual({ pages: null, reason })
  })
})

/** Left, top, right, bottom of a shape; a letter is taken as wide as its size. */
function boxOf(shape: SheetShape): [number, number, number, number] {
  if (shape.kind === 'circle')
    return [shape.x - shape.radius, shape.y - shape.radius, shape.x + shape.radius, shape.y + shape.radius]
  if (shape.kind === 'line')
    return [
      Math.min(shape.x1, shape.x2),
      Math.min(shape.y1, shape.y2),
      Math.max(shape.x1, shape.x2),
      Math.max(shape.y1, shape.y2),
    ]
  // Sentences are narrower than a title that may be all capitals.
  const width = Array.from(shape.text).length * shape.size * (shape.size === 4 ? 0.95 : 0.52)
  const left = shape.x - { start: 0, middle: 0.5, end: 1 }[shape.anchor] * width
  return [left, shape.y - shape.size, left + width, shape.y + shape.size * 0.25]
}
