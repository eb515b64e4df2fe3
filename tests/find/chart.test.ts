import { expect, test } from 'vitest'
import { faultChart } from '@/find/chart.ts'
import { exampleOf, lookAt, standardLooks } from '@/find/battery.ts'
import { checks, partChecks } from '@/find/checks.ts'
import { howCommon } from '@/find/how-common.ts'
import { faultKinds } from '@/mechanism/fault-kinds.ts'
import { chartTitle } from '@/words/fault-chart.ts'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'

const library = cardLibrary(cardsFolder)
const pattern = library.cards.get(library.main) ?? [0]
const rows = faultChart(pattern)

test('every kind of fault is in one row of the chart, the most common of a row first', () => {
  expect(rows.flatMap(({ kinds }) => kinds).sort()).toEqual(Object.keys(faultKinds).sort())
  for (const { kinds } of rows) {
    const weights = kinds.map((kind) => howCommon[kind])
    expect(weights).toEqual([...weights].sort((one, other) => other - one))
  }
})

test('no two rows have one heading, and each heading is what its picture shows', () => {
  const titles = rows.map(chartTitle)
  expect(new Set(titles).size).toBe(rows.length)
  for (const [n, { pass, came }] of rows.entries()) {
    expect(pass.departures.length, titles[n]).toBeGreaterThan(0)
    if (came !== null)
      expect(
        pass.departures.every((departure) => departure.came === came),
        titles[n],
      ).toBe(true)
  }
  const wrong = (title: string): number[] =>
    rows[titles.indexOf(title)]?.pass.departures.map(({ needle }) => needle % 24) ?? []
  expect(new Set(wrong('Every 24th needle missed')).size).toBe(1)
  expect(new Set(wrong('Every 8th needle missed')).size).toBe(3)
  expect(wrong('One needle missed')).toHaveLength(1)
})

test('a row’s checks take at most one cover off, and the first finds most for its minutes and its risk', () => {
  for (const row of rows) {
    const worth = (id: string, shows: readonly string[]): number => {
      const check = checks.find((one) => one.id === id)
      const share = row.kinds
        .filter((kind) => shows.includes(kind))
        .reduce((sum, kind) => sum + howCommon[kind], 0)
      return share / (check?.minutes ?? 1) / (check?.risk ?? 1)
    }
    const [first] = row.checks
    expect(row.checks.some(({ opened }) => opened === 'covers' || opened === 'reader')).toBe(false)
    const best = Math.max(
      ...partChecks.flatMap(({ id, shows, opened }) =>
        opened === 'covers' || opened === 'reader' ? [] : [worth(id, shows)],
      ),
    )
    expect(worth(first?.id ?? '', first?.shows ?? []), chartTitle(row)).toBeCloseTo(best)
  }
})

test('no row names a kind that its card would leave sound', () => {
  for (const row of rows)
    for (const kind of row.kinds) {
      const shows = standardLooks.filter(
        (look) =>
          look.card === row.look.card && lookAt([exampleOf(kind)], look, pattern).departures.length > 0,
      )
      expect(shows.length, `${kind} with ${row.look.card}`).toBeGreaterThan(0)
    }
})

test('every row has a check that takes at most one cover off', () => {
  for (const row of rows) expect(row.checks.length, chartTitle(row)).toBeGreaterThan(0)
})
