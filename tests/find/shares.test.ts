import { describe, expect, test } from 'vitest'
import { possibleSlot } from '@/find/bed-needles.ts'
import { columnChances, readers } from '@/find/chances.ts'
import { needleName } from '@/mechanism/bed.ts'
import { allNeedles } from '@/mechanism/indices.ts'
import { at } from '@/mechanism/lookup.ts'
import {
  expectNear,
  moving,
  needles,
  still,
  type ColumnName,
  type StripName,
  summed,
  sumWhere,
  told,
  twice,
  wears,
} from './one-strip.ts'

// What likelihood a thing has of all that is possible is by how much more all comes to if that thing were twice as likely.
describe('what a bed says of a place is its share of the whole sum', () => {
  test.each(moving)('of strips: %s', (_, looks) => {
    const base = summed(looks, 'whole', wears.as)
    const { tally } = told(base)
    for (const state of ['slow', 'seized', 'over'] satisfies StripName[]) {
      const more = summed(looks, 'whole', wears.as, twice('strips', 2, state))
      expect([state, sumWhere(tally, `strip.3 strip.3.${state}`)]).toEqual([
        state,
        expect.closeTo(Math.expm1(more.log - base.log), 5),
      ])
    }
  })

  test.each(moving)('of columns: %s', (_, looks) => {
    const base = summed(looks, 'whole', wears.as)
    const { tally } = told(base)
    const ids: Record<ColumnName, string> = {
      dead: 'pin.C.low|rocker.C.dead',
      high: 'pin.C.high',
      over: 'pin.C.over',
      sticky: 'pin.C.sticky',
    }
    for (const column of [3, 11, 19])
      for (const state of ['dead', 'high', 'over', 'sticky'] satisfies ColumnName[]) {
        const more = summed(looks, 'whole', wears.as, twice('columns', column - 1, state))
        const start = `column.${column} ${ids[state].replaceAll('C', String(column))}`
        expectNear(start, sumWhere(tally, start), Math.expm1(more.log - base.log))
      }
  })

  test.each([...moving, ['a strip that is still', still] as const])('of needles: %s', (_, looks) => {
    const base = summed(looks, 'whole', wears.as)
    const { tally } = told(base)
    for (const needle of [102, 126]) {
      const name = needleName(at(allNeedles, needle))
      const ids = {
        noHold: `catch.${name}.broken|needle.${name}.bent`,
        stiff: `needle.${name}.stiff`,
        gone: `needle.${name}.gone`,
      }
      for (const state of ['noHold', 'stiff', 'gone'] as const) {
        const more = summed(looks, 'whole', wears.as, twice('needles', possibleSlot(needle), state))
        const key = `needle.${name} ${ids[state]}`
        expectNear(key, tally.get(key) ?? 0, Math.expm1(more.log - base.log))
      }
    }
  })

  test('of a column whose strip does not move as it was before anything was seen', () => {
    const base = summed(still, 'whole', wears.as)
    const { tally } = told(base)
    const seized = tally.get('strip.3 strip.3.seized')!
    expect(seized).toBeGreaterThan(0.95)
    const byReader = readers.map((_, reader) =>
      base.weights.reduce(
        (sum, weight, n) =>
          base.sums.hidden[n % base.sums.hidden.length]!.reader === reader ? sum + weight : sum,
        0,
      ),
    )
    for (const [id, state] of [
      ['pin.11.high', 'high'],
      ['pin.11.over', 'over'],
      ['other', 'other'],
    ] as const) {
      const before = readers.reduce((sum, name, n) => sum + byReader[n]! * columnChances[name][state], 0)
      expect(tally.get(`column.11 ${id}`)).toBeCloseTo(before, 3)
    }
  })

  test.each(moving)('of a strip that is right with its columns: %s', (_, looks) => {
    const base = summed(looks, 'whole', wears.as)
    const { tally, bed } = told(base)
    const blocks = at(bed.whole.strips, 2)
    const of = (isIt: (block: (typeof blocks)[number]) => boolean): number =>
      blocks.reduce((sum, block) => (isIt(block) ? sum + block.weight : sum), 0)
    expect(of(() => true)).toBeCloseTo(1, 3)
    expect(
      of(({ strip, columns }) => strip === 'right' && columns.every((kind) => kind === 'right')),
    ).toBeCloseTo(at(bed.rightStrips, 2), 3)
    for (const state of ['slow', 'seized', 'over'] as const)
      expect(of(({ strip }) => strip === state)).toBeCloseTo(sumWhere(tally, `strip.3 strip.3.${state}`), 3)
    for (const [n, column] of [3, 11, 19].entries()) {
      const hidden = of(({ strip }) => strip === 'seized' || strip === 'over')
      for (const [kind, id] of [
        ['dead', `pin.${column}.low|rocker.${column}.dead`],
        ['high', `pin.${column}.high`],
        ['over', `pin.${column}.over`],
        ['sticky', `pin.${column}.sticky`],
        ['other', 'other'],
      ] as const)
        expect(
          Math.abs(of(({ columns }) => columns[n] === kind) - sumWhere(tally, `column.${column} ${id}`)),
        ).toBeLessThan(2e-3 + 0.2 * hidden)
    }
    expect(bed.whole.share).toBeCloseTo(1, 9)
  })
})

describe('what a worn bed with loose pivots says', () => {
  test.each(moving.slice(0, 2))('is its share of the whole sum, nearly: %s', (_, looks) => {
    const base = summed(looks, 'loose', wears.worn)
    const { tally } = told(base)
    for (const state of ['slow', 'seized', 'over'] satisfies StripName[]) {
      const more = summed(looks, 'loose', wears.worn, twice('strips', 2, state))
      expect(sumWhere(tally, `strip.3 strip.3.${state}`)).toBeCloseTo(Math.expm1(more.log - base.log), 4)
    }
    const needle = needleName(at(allNeedles, needles[0]!))
    const more = summed(looks, 'loose', wears.worn, twice('needles', possibleSlot(needles[0]!), 'noHold'))
    const key = `needle.${needle} catch.${needle}.broken|needle.${needle}.bent`
    expectNear(key, tally.get(key) ?? 0, Math.expm1(more.log - base.log), 1e-3)
    const dead = summed(looks, 'loose', wears.worn, twice('columns', 2, 'dead'))
    const name = 'column.3 pin.3.low|rocker.3.dead'
    expectNear(name, tally.get(name) ?? 0, Math.expm1(dead.log - base.log), 3e-3)
  })
})
