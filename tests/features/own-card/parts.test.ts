import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { placesBetween } from '@/features/own-card/painting.ts'
import { fileName } from '@/browser/save-file.ts'

describe('the way of a quick hand over the card', () => {
  const places = fc.record({
    row: fc.integer({ min: 1, max: 200 }),
    column: fc.integer({ min: 1, max: 24 }),
  })

  test('ends where the hand is and skips no place', () => {
    fc.assert(
      fc.property(places, places, (from, to) => {
        const way = [from, ...placesBetween(from, to)]
        expect(way.at(-1)).toEqual(to)
        for (let n = 1; n < way.length; n++) {
          const [a, b] = [way[n - 1]!, way[n]!]
          expect(Math.max(Math.abs(a.row - b.row), Math.abs(a.column - b.column))).toBe(1)
        }
      }),
    )
  })

  test('is empty where the hand stays', () => {
    expect(placesBetween({ row: 3, column: 4 }, { row: 3, column: 4 })).toEqual([])
  })
})

describe('the name of a saved file', () => {
  test.each([
    ['Own card', 'own-card.txt'],
    ['Zwei Ärmel', 'zwei-ärmel.txt'],
    ['Zwei A\u0308rmel', 'zwei-ärmel.txt'],
    ['カード', 'カード.txt'],
    ['カート\u3099', 'カード.txt'],
    ['हिन्दी कार्ड', 'हिन्दी-कार्ड.txt'],
    [`${'a'.repeat(39)}िकि`, `${'a'.repeat(39)}ि.txt`],
    [`${'a'.repeat(38)}किकि`, `${'a'.repeat(38)}कि.txt`],
    [`o${'\u0301'.repeat(300)}`, 'card.txt'],
    ['../../etc/passwd', 'etc-passwd.txt'],
    ['Ёлка 2', 'ёлка-2.txt'],
    ['...', 'card.txt'],
    ['', 'card.txt'],
    ['a'.repeat(90), `${'a'.repeat(40)}.txt`],
  ])('for “%s” is %s', (title, name) => {
    expect(fileName(title, 'card', 'txt')).toBe(name)
  })
})
