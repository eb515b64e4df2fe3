import { describe, expect, test } from 'vitest'
import { allSeized } from '@/commands/bench/strip-sets.ts'
import { machinesOf } from '@/commands/bench/machine.ts'
import { queryOf as benchQuery } from '@/commands/bench/notes.ts'
import { bedsOf } from '@/commands/bench/truth.ts'
import { infer } from '@/find/infer.ts'
import type { Finding } from '@/find/finding.ts'
import { lettersOf } from '@/find/bed-letters.ts'
import { type Query, viewsOfQuery } from '@/find/query.ts'
import { scenarioIn } from '@/find/view.ts'
import type { FaultId } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { allStrips } from '@/mechanism/indices.ts'
import { at } from '@/mechanism/lookup.ts'
import { startRun } from '@/mechanism/pass.ts'
import { firstPasses, randomCard } from './make.ts'
import { notedQuery } from './noted.ts'

const card = [...randomCard(6, 5), 0xffffff, 0]

/** Eight rows at 500 mm/s and the first two again at 900, on a machine with these faults. */
const noted = (ids: readonly FaultId[]): Query =>
  notedQuery(
    card,
    [
      ...firstPasses(card.length, card.length, 500).map((pass, n) => ({ ...pass, pass: n + 1 })),
      ...firstPasses(card.length, 2, 900).map((pass, n) => ({ ...pass, pass: n + 1 })),
    ],
    ids,
  )

const wrongAt = ({ places }: Finding, place: string): number =>
  places.find((one) => one.place === place)?.wrong ?? 0

/** Places given more than one half. */
const likely = ({ places }: Finding): string[] =>
  places.flatMap(({ place, wrong }) => (wrong > 0.5 ? [place] : [])).sort()

/** A worn machine of the bench beside whose pins loose pivots are summed, and some of its notes that are slips, by look. */
const rattling = { seed: 1, number: 154 } as const
const slipped = [[67, 183], [131], [], [61, 126], [187], [34, 165, 171], [160], [], [], []] as const

test('Chances stay numbers where next to nothing of a sum is left', () => {
  const machine = at(machinesOf(rattling.seed, rattling.number + 1), rattling.number)
  const beds = bedsOf(machine).map((bed, look) =>
    Array.from(bed, (letter, needle) =>
      !(at(slipped, look) as readonly number[]).includes(needle) ? letter : letter === 's' ? 'p' : 's',
    ).join(''),
  )
  const { places, oil, wear } = infer(benchQuery(machine, beds))
  expect(oil.fresh + oil.old + oil.set).toBeCloseTo(1, 9)
  expect(wear.mean).toBeCloseTo(machine.wear, 1)
  expect(places.slice(0, 3).map(({ place }) => place)).toEqual(['column.12', 'column.18', 'needle.L74'])
})

describe('what looks like something else is not taken for it', { timeout: 120_000 }, () => {
  test.each<[FaultId]>([['belt.slack=1.69'], ['belt.slack=4'], ['belt.timing=3'], ['belt.timing=-2.5']])(
    'a belt that is out both ways, by %s, beside a slow strip whose ghosts are all that is selected',
    (belt) => {
      expect(likely(infer(noted([belt, 'strip.3.slow=400'])))).toEqual(['belt', 'strip.3'])
    },
  )

  test.each([1, 4, 7].flatMap((strip) => [600, 1000].map((ms) => [strip, ms] as const)))(
    'seven seized strips beside strip %d at %d ms, which do what a belt far out does beside it',
    (strip, ms) => {
      const faults = allStrips.map((one) =>
        faultOf(one === strip ? `strip.${one}.slow=${ms}` : `strip.${one}.seized`),
      )
      const machine = { ...allSeized, faults }
      const found = infer(benchQuery(machine, bedsOf(machine)))
      expect(likely(found)).toEqual(allStrips.map((one) => `strip.${one}`))
      expect(wrongAt(found, 'belt')).toBeLessThan(0.2)
    },
  )

  test('a pin up on a slow strip, beside other slow ones, is no worn retainer bar', () => {
    const found = infer(
      noted(['strip.2.slow=960', 'strip.4.slow=193', 'strip.7.seized', 'pin.4.high', 'rocker.9.dead']),
    )
    expect(likely(found)).toEqual(['column.4', 'column.9', 'strip.2', 'strip.4', 'strip.7'])
    expect(wrongAt(found, 'retainer')).toBeLessThan(0.1)
  })

  test('a worn retainer bar with the same beside it is still found', () => {
    const found = infer(noted(['strip.2.slow=960', 'strip.4.slow=193', 'pin.4.high', 'retainer.worn=9']))
    expect(likely(found)).toEqual(['column.4', 'retainer', 'strip.2', 'strip.4'])
  })

  test('pivots so little loose that one needle in a hundred is missed are not ruled out', () => {
    const query = noted([])
    const faults = [faultOf('pivots.loose=0.25')]
    const missed = [1, 2, 3].map((seed) => {
      const passes = viewsOfQuery(query).map((view, n) => {
        const run = startRun({ ...scenarioIn(view, faults), seed })
        return { ...at(query.passes, n), needles: lettersOf(run.passOf(view.pass)) }
      })
      return wrongAt(infer({ ...query, passes }), 'pivots')
    })
    expect(Math.max(...missed)).toBeGreaterThan(0.5)
    expect(wrongAt(infer(query), 'pivots')).toBeLessThan(0.1)
  })
})
