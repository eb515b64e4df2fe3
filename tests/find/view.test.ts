import { describe, expect, test } from 'vitest'
import { rowDue, viewsOf } from '@/find/view.ts'
import { usualPlace, wayOfPass } from '@/mechanism/bed.ts'
import { firstPasses, randomCard } from './make.ts'

const even = randomCard(8, 1)
const odd = randomCard(7, 2)
const speed = 500

describe('the views of noted passes', () => {
  test('are passes 1, 2, 3 … where the rows follow one another, past the end of the card too', () => {
    const views = viewsOf(even, firstPasses(8, 20, speed), usualPlace)
    expect(views.map(({ pass }) => pass)).toEqual(Array.from({ length: 20 }, (_, n) => n + 1))
    expect(new Set(views.map(({ shift }) => shift))).toEqual(new Set([0]))
  })
  test('always read the row noted, the way noted, whatever the order', () => {
    for (const card of [even, odd, randomCard(1, 3), randomCard(2, 4)])
      for (let row = 1; row <= card.length; row++)
        for (const way of [1, -1] as const) {
          const noted = [
            { row: 1, way: 1 as const, speed },
            { row, way, speed },
            { row, way, speed: 900 },
          ]
          for (const [n, view] of viewsOf(card, noted, usualPlace).entries()) {
            expect(rowDue(view)).toBe(noted[n]!.row)
            expect(wayOfPass(view.pass)).toBe(noted[n]!.way)
            expect(view.card?.[(view.pass - 1) % card.length]).toBe(card[noted[n]!.row - 1])
          }
        }
  })
  test('take a row again a whole card later, or a card laid in one row on, where its way does not fit', () => {
    expect(viewsOf(odd, [{ row: 2, way: 1, speed }], usualPlace)[0]).toMatchObject({
      pass: 9,
      shift: 0,
      ...usualPlace,
    })
    expect(viewsOf(even, [{ row: 2, way: 1, speed }], usualPlace)[0]).toMatchObject({
      pass: 1,
      shift: 1,
      ...usualPlace,
    })
    expect(viewsOf(even, [{ row: 1, way: -1, speed }], usualPlace)[0]).toMatchObject({
      pass: 8,
      shift: 1,
      ...usualPlace,
    })
  })
  test('are the passes noted where they are, which follow no other and may be the same again', () => {
    const noted = [
      { row: 8, way: -1 as const, speed, pass: 8 },
      { row: 1, way: 1 as const, speed, pass: 1 },
      { row: 1, way: 1 as const, speed: 900, pass: 1 },
      { row: 2, way: -1 as const, speed, pass: 10 },
    ]
    expect(viewsOf(even, noted, usualPlace).map(({ pass, shift }) => [pass, shift])).toEqual([
      [8, 0],
      [1, 0],
      [1, 0],
      [10, 0],
    ])
  })
  test('have the card laid in as the row of a noted pass asks', () => {
    for (const card of [even, odd])
      for (const pass of [1, 2, 9, 16])
        for (let row = 1; row <= card.length; row++) {
          const [view] = viewsOf(card, [{ row, way: wayOfPass(pass), speed, pass }], usualPlace)
          expect(view).toMatchObject({ pass, speed })
          expect(rowDue(view!)).toBe(row)
          expect(view!.card?.[(pass - 1) % card.length]).toBe(card[row - 1])
        }
    expect(viewsOf(null, [{ row: null, way: 1, speed, pass: 5 }], usualPlace)[0]).toMatchObject({
      card: null,
      pass: 5,
      shift: null,
      ...usualPlace,
    })
  })
  test('have no row without a card', () => {
    const noted = [
      { row: null, way: 1 as const, speed },
      { row: null, way: -1 as const, speed },
    ]
    expect(viewsOf(null, noted, usualPlace).map(({ card, pass }) => [card, pass])).toEqual([
      [null, 1],
      [null, 2],
    ])
  })
})
