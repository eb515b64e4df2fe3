import { describe, expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { exampleOf, lookAt, standardLooks, speeds } from '@/find/battery.ts'
import { faultChart } from '@/find/chart.ts'
import { rowsForFaults } from '@/find/codes.ts'
import { symptoms } from '@/find/likeness.ts'
import { faultId } from '@/mechanism/fault.ts'

const pattern = cardLibrary(cardsFolder).cards.get('harbour-star')!

describe('the rows of the chart', () => {
  test('are these, each with its first kind as it is seen most plainly', () => {
    const rows = faultChart(pattern)
    const written = rows.map(({ symptom, came, kinds }) => `${symptom} ${came ?? '-'}: ${kinds.join(' ')}`)
    expect(written).toEqual([
      'nothing -: carriage.plain belt.off card.side card.skew belt.slack sweep.worn pivots.loose belt.timing gate.1.low',
      'everything -: gate.1.high',
      'eighth plain: strip.seized',
      'eighth selected: strip.over pin.over',
      'twentyFourth plain: pin.low pin.sticky rocker.worn rocker.dead',
      'twentyFourth selected: pin.high',
      'one plain: needle.bent catch.broken',
      'one unmoved: needle.gone',
      'oneWay -: presser.right.worn presser.left.worn',
      'fast -: retainer.worn strip.slow needle.stiff',
      'oneRow selected: card.torn',
      'oneRow plain: card.blocked',
      'rows -: turn.short card.reversed card.locked turn.twice pawl.right pawl.left pawl.skips pawl.jumps pawl.double',
    ])
    expect(rows.map(({ kinds, look }) => `${kinds[0]!} ${look.card} ${look.pass} ${look.speed}`)).toEqual([
      'carriage.plain pattern 1 500',
      'gate.1.high pattern 1 500',
      'strip.seized holes 1 500',
      'strip.over pattern 1 500',
      'pin.low holes 1 500',
      'pin.high blank 1 500',
      'needle.bent holes 1 500',
      'needle.gone holes 1 500',
      'presser.right.worn pattern 1 500',
      'retainer.worn pattern 1 500',
      'card.torn blank 1 500',
      'card.blocked pattern 1 500',
      'turn.short pattern 2 500',
    ])
    expect([...new Set(rows.map(({ symptom }) => symptom))]).toEqual([...symptoms])
    for (const { kinds, look, pass } of rows) {
      expect(pass.departures).toEqual(lookAt([exampleOf(kinds[0]!)], look, pattern).departures)
    }
  })
})

describe('the looks that need no tool', () => {
  test('go from the patterned card to plain ones, and from the ordinary speed to others', () => {
    expect(standardLooks.map(({ card, pass, speed }) => `${card} ${pass} ${speed}`)).toEqual([
      ...['pattern 1 500', 'pattern 2 500', 'pattern 3 500', 'pattern 4 500'],
      ...['holes 1 500', 'blank 1 500', 'holes 2 500', 'blank 2 500'],
      ...['pattern 1 90', 'pattern 1 900', 'blank 1 900', 'blank 1 90'],
    ])
    expect(speeds).toEqual({ slow: 90, ordinary: 500, fast: 900 })
  })

  test('are of examples about one needle, its column and its strip', () => {
    const id = (kind: Parameters<typeof exampleOf>[0]): string => faultId(exampleOf(kind))
    expect([id('needle.bent'), id('pin.low'), id('strip.seized'), id('card.torn'), id('turn.short')]).toEqual(
      ['needle.R12.bent', 'pin.12.low', 'strip.4.seized', 'card.torn.1.12', 'turn.short.2'],
    )
    expect([id('sweep.worn'), id('strip.slow'), id('card.locked')]).toEqual([
      'sweep.worn=0.8',
      'strip.4.slow',
      'card.locked',
    ])
  })

  test('with a card of all holes or none see one row of four torn or blocked', () => {
    const wrongIn = (kind: 'card.torn' | 'card.blocked', card: 'holes' | 'blank'): boolean[] =>
      [1, 2, 3, 4, 5].map(
        (pass) => lookAt([exampleOf(kind)], { card, pass, speed: 500 }, pattern).departures.length > 0,
      )
    expect(wrongIn('card.torn', 'blank')).toEqual([true, false, false, false, true])
    expect(wrongIn('card.blocked', 'holes')).toEqual([true, false, false, false, true])
    expect(wrongIn('card.blocked', 'blank')).toEqual([false, false, false, false, false])
  })
})

describe('the fewest rows that part the faults of columns', () => {
  test('are three at least, and more where more columns share a strip', () => {
    expect([1, 2, 3, 4, 6, 7, 10, 11, 24].map(rowsForFaults)).toEqual([3, 3, 3, 4, 4, 5, 5, 6, 7])
  })
})
