import { describe, expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { slips } from '@/find/chances.ts'
import { infer } from '@/find/infer.ts'
import { lettersOf } from '@/find/bed-letters.ts'
import { type NotedPass, type Query, viewsOfQuery } from '@/find/query.ts'
import { scenarioIn } from '@/find/view.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { at, entry } from '@/mechanism/lookup.ts'
import { startRun } from '@/mechanism/pass.ts'

const card = entry(cardLibrary(cardsFolder).cards, 'home-fleet')

/** Eight rows with these faults, as the model makes them. */
const seen = (ids: readonly string[], seed: number): Query => {
  const blank: Query = {
    card,
    ...usualPlace,
    slip: slips.sure,
    checks: [],
    passes: Array.from({ length: 8 }, (_, n): NotedPass => ({
      card,
      row: n + 1,
      way: n % 2 === 0 ? 1 : -1,
      speed: 500,
      needles: '',
    })),
  }
  const views = viewsOfQuery(blank)
  const faults = ids.map(faultOf)
  const passes = blank.passes.map((pass, n) => {
    const view = at(views, n)
    const run = startRun({ ...scenarioIn(view, faults), seed })
    return { ...pass, needles: lettersOf(run.passOf(view.pass)) }
  })
  return { ...blank, passes }
}

describe('loose pivots beside strips that are slow or seized', () => {
  test.each([
    [['pivots.loose=0.4', 'strip.1.slow=300', 'strip.2.seized', 'strip.3.slow=300']],
    [['pivots.loose=0.3', 'strip.1.seized', 'strip.3.slow=200', 'strip.4.seized', 'strip.7.seized']],
    [['pivots.loose=0.4', 'strip.1.slow=300']],
  ])('leave every chance a number, and what is seized is found: %s', (ids) => {
    for (const seed of [1, 2, 3]) {
      const { places, oil, wear } = infer(seen(ids, seed))
      expect(oil.fresh + oil.old + oil.set).toBeCloseTo(1, 9)
      expect(wear.mean).toBeGreaterThanOrEqual(0)
      const chances = places.flatMap(({ wrong, ways }) => [
        wrong,
        ...ways.map(({ probability }) => probability),
      ])
      expect(chances.every((chance) => chance >= 0 && chance <= 1)).toBe(true)
      for (const id of ids)
        if (id.endsWith('seized'))
          expect(places.find(({ place }) => place === id.replace('.seized', ''))?.wrong).toBeGreaterThan(0.5)
    }
  })
})
