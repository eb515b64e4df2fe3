import { describe, expect, test } from 'vitest'
import { slowChances } from '@/find/chances.ts'
import { oilCard } from '@/find/oil-card.ts'
import { testCard } from '@/find/test-card.ts'
import { partedTogether } from '@/find/together-parted.ts'
import { dictionaryOf } from '@/find/dictionary.ts'
import { shownByAll, settingOf } from '@/find/shown.ts'
import { soundBeds } from '@/find/sound.ts'
import { scenarioIn, type View } from '@/find/view.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import { hasHole } from '@/mechanism/card.ts'
import type { Fault } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { allNeedles, toColumn } from '@/mechanism/indices.ts'
import { startRun } from '@/mechanism/pass.ts'
import { atOnceWords, oilPassWords } from '@/words/test-card.ts'
import { numbers } from './make.ts'

const { card, passes } = oilCard()

/** What each strip shows of the card on a machine, its needles near the ends left aside. */
const stripsOf = (faults: readonly Fault[], made = passes, rows = card): string[] => {
  const looks = made.map(({ row, speed }) => {
    const view: View = { card: rows, pass: row, speed, shift: 0, ...usualPlace }
    return startRun(scenarioIn(view, faults)).passOf(view.pass).came
  })
  return Array.from({ length: 8 }, (_, strip) =>
    looks
      .map((came) =>
        came.filter((_, n) => n % 8 === (usualPlace.columnOne + strip) % 8 && n > 60 && n < 140).join(),
      )
      .join(' '),
  )
}

describe('the card for oil that has set', { timeout: 60_000 }, () => {
  test('shows of every strip what it is, whatever the others are', () => {
    const next = numbers(5)
    const known = new Map<string, string>()
    for (let machine = 0; machine < 60; machine++) {
      const states = Array.from({ length: 8 }, () => Math.floor(next() * 4))
      const faults = states.flatMap((state, n) => {
        const { ms } = slowChances[Math.floor(next() * slowChances.length)]!
        const ids = [null, `strip.${n + 1}.seized`, `strip.${n + 1}.over`, `strip.${n + 1}.slow=${ms}`]
        return ids[state] ? [faultOf(ids[state])] : []
      })
      for (const [n, shown] of stripsOf(faults).entries()) {
        const column = `${n} ${shown}`
        const before = known.get(column)
        expect(before ?? String(states[n]), column).toBe(String(states[n]))
        known.set(column, String(states[n]))
      }
    }
  })

  test('treats all strips alike, and goes slowly before it goes fast', () => {
    for (const row of card)
      for (let column = 1; column <= 24; column++)
        expect(hasHole(row, toColumn(column))).toBe(
          hasHole(row, toColumn(Math.floor((column - 1) / 8) * 8 + 1)),
        )
    expect(passes.map(({ row }) => row)).toEqual(card.map((_, n) => n + 1))
    expect(passes.map(({ speed }) => speed)).toEqual(passes.map(({ speed }) => speed).sort((a, b) => a - b))
    expect(passes[0]!.speed).toBe(90)
  })

  test('has as few passes as can be: no single one shows it', () => {
    expect(passes).toHaveLength(2)
    for (let pattern = 0; pattern < 8; pattern++)
      for (const speed of [90, 500, 900]) {
        const row = Array.from({ length: 24 }, (_, n) => (pattern >> Math.floor(n / 8)) & 1).reduce(
          (bits, hole) => 2 * bits + hole,
          0,
        )
        const shown = (id?: string) =>
          stripsOf(id ? [faultOf(id)] : [], [{ row: 1, way: 1, speed }], [row])[0]
        const states = [
          [shown()],
          [shown('strip.1.seized')],
          [shown('strip.1.over')],
          slowChances.map(({ ms }) => shown(`strip.1.slow=${ms}`)),
        ]
        const all = states.flatMap((own) => [...new Set(own)])
        expect(new Set(all).size, `${pattern} ${speed}`).toBeLessThan(all.length)
      }
  })
})

describe('what is parted at once', { timeout: 120_000 }, () => {
  const { views } = testCard().dictionary
  const pairs = partedTogether(views, 2)

  test('are all pairs of columns and all of needles, and of a strip and its columns those that it does not hide', () => {
    const of = (places: string) => pairs.find((one) => one.places.join(' ') === places)!
    for (const places of ['column column', 'needle needle'])
      expect(of(places).parted, places).toBe(of(places).all)
    // A strip that never moves and one that is always over hide all three columns; a slow one shows them.
    expect(of('strip column').parted).toBeLessThan(of('strip column').all)
    expect(of('strip column').parted).toBeGreaterThan(0)
    expect(of('strip column').all).toBe(8 * 3 * 3 * 3)
  })

  test('agrees with the whole bed as the model has it', () => {
    const beds = soundBeds()
    const settings = views.map((view) => settingOf(view, beds))
    const shown = (...ids: string[]): string =>
      shownByAll(
        ids.map((id) => faultOf(id as never)),
        allNeedles,
        settings,
      )
        .map(({ changed }) => changed.join())
        .join(' ')
    const isParted = (one: string, other: string): boolean =>
      new Set([shown(), shown(one), shown(other)]).size === 3 &&
      ![shown(one), shown(other)].includes(shown(one, other))
    expect(isParted('pin.3.low', 'pin.11.high')).toBe(true)
    expect(isParted('strip.3.seized', 'pin.3.low')).toBe(false)
    expect(isParted('strip.3.slow=300', 'pin.3.low')).toBe(true)
  })

  test('are none where nothing is looked at but a blank card', () => {
    const blank = dictionaryOf([{ card: [0], pass: 1, speed: 500, shift: 0, ...usualPlace }], []).views
    const needles = partedTogether(blank, 2).find(({ places }) => places.join(' ') === 'column column')!
    expect(needles.parted).toBeLessThan(needles.all)
  })
})

test('what is wrong at once, and the passes, are said in words', () => {
  expect(atOnceWords(['strip', 'column', 'column'])).toBe('the strip and two columns')
  expect(atOnceWords(['strip', 'column', 'needle'])).toBe('the strip, a column and a needle')
  expect(atOnceWords(['needle', 'needle', 'needle'])).toBe('three needles')
  expect(oilPassWords(passes[0]!)).toBe('Row 1, to the right, the whole bed in about 10 seconds.')
})
