import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Brightness,
  brightnessOf,
  cardOfCells,
  cellAverages,
  type PictureSettings,
  usualRows,
  usualThreshold,
} from '@/link/card-picture.ts'
import { type Card, hasHole } from '@/mechanism/card.ts'
import { toColumn } from '@/mechanism/indices.ts'
import { ownCards } from './arbitraries.ts'

const settings: PictureSettings = { threshold: 128, holes: 'dark', isRow1AtBottom: true }

/** A picture of a card, so many pixels a cell, row 1 at the bottom, a hole black. */
const pictureOf = (card: Card, across: number, down: number): Brightness => {
  const [width, height] = [24 * across, card.length * down]
  const values = Array.from({ length: width * height }, (_, n) => {
    const column = Math.floor((n % width) / across) + 1
    const row = card.length - Math.floor(Math.floor(n / width) / down)
    return hasHole(card[row - 1]!, toColumn(column)) ? 0 : 255
  })
  return { width, height, values }
}

const flat = (width: number, height: number, shade: number): Brightness => ({
  width,
  height,
  values: new Array<number>(width * height).fill(shade),
})

describe('a picture of a card', () => {
  test('gives the card back, however many pixels a cell has', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 0xffffff }), { minLength: 1, maxLength: 12 }),
        fc.integer({ min: 1, max: 5 }),
        fc.integer({ min: 1, max: 5 }),
        (card, across, down) => {
          const cells = cellAverages(pictureOf(card, across, down), card.length)
          expect(cardOfCells(cells, settings)).toEqual(card)
        },
      ),
    )
  })

  test('gives the same rows the other way up where its top is row 1', () => {
    const cells = cellAverages(pictureOf([1, 2, 4], 1, 1), 3)
    expect(cardOfCells(cells, { ...settings, isRow1AtBottom: false })).toEqual([4, 2, 1])
  })

  test('has the other places as holes where light is a hole', () => {
    fc.assert(
      fc.property(ownCards, fc.integer({ min: 0, max: 255 }), (card, threshold) => {
        const cells = cellAverages(pictureOf(card, 1, 1), card.length)
        const dark = cardOfCells(cells, { ...settings, threshold })
        const light = cardOfCells(cells, { ...settings, threshold, holes: 'light' })
        expect(dark.map((row, n) => row ^ light[n]!)).toEqual(card.map(() => 0xffffff))
      }),
      { numRuns: 30 },
    )
  })

  test('has more holes the higher the threshold', () => {
    const shades = Array.from({ length: 24 * 4 }, (_, n) => (n * 255) / 95)
    const cells = cellAverages({ width: 24, height: 4, values: shades }, 4)
    let before = 0
    for (let threshold = 0; threshold <= 255; threshold++) {
      const holes = cardOfCells(cells, { ...settings, threshold }).reduce(
        (sum, row) => sum + row.toString(2).replaceAll('0', '').length,
        0,
      )
      expect(holes).toBeGreaterThanOrEqual(before)
      before = holes
    }
  })
})

describe('a cell', () => {
  test('is the mean of what it covers, parts of pixels by their share', () => {
    const values = [0, 100, 200]
    const cells = cellAverages({ width: 1, height: 3, values }, 2)
    expect(cells[0]![0]).toBeCloseTo((0 * 1 + 100 * 0.5) / 1.5)
    expect(cells[1]![0]).toBeCloseTo((100 * 0.5 + 200 * 1) / 1.5)
    expect(cells[1]![23]).toBeCloseTo((100 * 0.5 + 200 * 1) / 1.5)
  })

  test('of a picture of one shade is that shade, whatever the sizes', () => {
    const size = fc.integer({ min: 1, max: 70 })
    fc.assert(
      fc.property(size, size, size, fc.integer({ min: 0, max: 255 }), (width, height, rows, shade) => {
        const cells = cellAverages(flat(width, height, shade), rows)
        expect(cells).toHaveLength(rows)
        for (const cell of cells.flat()) expect(cell).toBeCloseTo(shade, 6)
      }),
    )
  })

  test('all together have the mean of the picture', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 255 }), { minLength: 35, maxLength: 35 }),
        fc.integer({ min: 1, max: 30 }),
        (values, rows) => {
          const cells = cellAverages({ width: 7, height: 5, values }, rows).flat()
          const mean = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0) / all.length
          expect(mean(cells)).toBeCloseTo(mean(values), 6)
        },
      ),
    )
  })
})

describe('what is proposed', () => {
  test.each([
    [24, 40, 40],
    [480, 800, 40],
    [1000, 1000, 24],
    [1000, 1, 1],
    [1, 5000, 200],
  ])('for %d by %d pixels is %d rows', (width, height, rows) => {
    expect(usualRows(width, height)).toBe(rows)
  })

  test('parts the darkest from the lightest', () => {
    expect(usualThreshold([[40, 80]])).toBe(60)
    expect(usualThreshold([[200, 200]])).toBe(128)
  })
})

describe('brightness', () => {
  test('is black 0, white 255, green lighter than red and red than blue, and white shows through', () => {
    const pixels = [
      [0, 0, 0, 255],
      [255, 255, 255, 255],
      [0, 255, 0, 255],
      [255, 0, 0, 255],
      [0, 0, 255, 255],
      [0, 0, 0, 0],
      [0, 0, 0, 51],
    ]
    const values = Array.from(brightnessOf(7, 1, pixels.flat()).values).map(Math.round)
    expect(values).toEqual([0, 255, 182, 54, 18, 255, 204])
  })

  test('has a value for each pixel, line by line', () => {
    const grey = (shade: number): number[] => [shade, shade, shade, 255]
    const { width, height, values } = brightnessOf(2, 3, [10, 20, 30, 40, 50, 60].flatMap(grey))
    expect([width, height, ...Array.from(values).map(Math.round)]).toEqual([2, 3, 10, 20, 30, 40, 50, 60])
  })
})
