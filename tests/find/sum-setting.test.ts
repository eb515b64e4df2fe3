import { expect, test } from 'vitest'
import { looksOf } from '@/find/looks.ts'
import { sumSettingOf } from '@/find/sum-setting.ts'
import { notedQuery, type Unnoted } from './noted.ts'

const card = [0xf0f0f0, 0x0f0f0f, 0xff00ff]

/** Which looks have which row under the pins, as bits. */
const rowsOf = (passes: readonly Unnoted[]): number[] => {
  const query = notedQuery(card, passes)
  return sumSettingOf(query, looksOf(query)).rows.toSorted((one, other) => one - other)
}

const pass = (n: number, row: number): Unnoted => ({ row, way: n % 2 === 1 ? 1 : -1, speed: 500, pass: n })

test('looks at the same row of a card share it, whichever pass they were made in', () => {
  expect(rowsOf([pass(1, 1), pass(2, 2), pass(3, 3), pass(4, 1), pass(5, 2)])).toEqual([
    0b00100, 0b01001, 0b10010,
  ])
})

test('rows of another card are others, and a look without a card has none', () => {
  expect(
    rowsOf([pass(1, 1), { ...pass(2, 1), card: [0xffffff] }, { ...pass(3, 1), card: [0xffffff] }]),
  ).toEqual([0b001, 0b110])
  expect(rowsOf([pass(1, 1), { ...pass(2, 1), card: null }])).toEqual([0b01])
})
