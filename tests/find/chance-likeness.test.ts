import { describe, expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { exampleOf, lookAt, standardLooks } from '@/find/battery.ts'
import { machinesTried, triedByChance } from '@/find/chance-likeness.ts'
import { likenesses } from '@/find/likeness.ts'
import { uniformDraw } from '@/mechanism/random.ts'
import { alikeToChanceWords, alikeWords, shownWords } from '@/words/likeness.ts'
import { count } from '../mechanism/make.ts'
import { holeIn } from '../mechanism/trade.ts'

const pattern = cardLibrary(cardsFolder).cards.get('harbour-star')!
const all = triedByChance(pattern)
const triedAt = (kind: string, amount: number) =>
  all.find(({ fault }) => fault.kind === kind && fault.amount === amount)!
const alikeTo = (kind: string, amount: number, other: string) =>
  triedAt(kind, amount).alike.find((one) => one.kind === other)

/** The pin that examples are about. */
const column = 12
const seeds = count(1, machinesTried)

/** Whether a pin that fails to rise with this chance is down in a look although there is a hole over it. */
const isDown = (share: number, seed: number, { card, pass }: (typeof standardLooks)[number]): boolean =>
  uniformDraw(seed, 'sticky', column - 1, pass) < share && hasHole({ card, pass })
const hasHole = ({ card, pass }: Pick<(typeof standardLooks)[number], 'card' | 'pass'>): boolean =>
  card === 'holes' || (card === 'pattern' && holeIn(pattern[pass - 1]!, column))

describe('a pin that sticks now and then', () => {
  test.each([0.25, 0.5, 0.75])('at a share of %f, shows where it fails to rise under a hole', (share) => {
    const shown = seeds.filter((seed) => standardLooks.some((look) => isDown(share, seed, look)))
    expect(triedAt('pin.sticky', share).shown).toBe(shown.length)
    // Wherever it shows, it shows what a pin stuck low shows; where it rises under another hole the two part.
    const parted = shown.filter((seed) =>
      standardLooks.some((look) => hasHole(look) && !isDown(share, seed, look)),
    )
    for (const other of ['pin.low', 'rocker.dead', 'rocker.worn'])
      expect(alikeTo('pin.sticky', share, other), other).toMatchObject({
        machines: shown.length,
        parted: parted.length,
      })
  })
  test('is like nothing that selects unasked, nor like one needle', () => {
    for (const other of ['pin.high', 'catch.broken', 'strip.seized', 'pivots.loose', 'card.torn'])
      expect(alikeTo('pin.sticky', 0.5, other), other).toBeUndefined()
  })
})

describe('loose pivots', () => {
  test.each([0.2, 0.3, 0.4])('of %f mm are like one broken catch where they miss one needle only', (mm) => {
    const misses = seeds.map((seed) => {
      const passes = standardLooks.map((look) => lookAt([exampleOf('pivots.loose', mm)], look, pattern, seed))
      return passes.find(({ departures }) => departures.length > 0)?.departures.length ?? 0
    })
    expect(triedAt('pivots.loose', mm).shown).toBe(misses.filter((missed) => missed > 0).length)
    const single = misses.filter((missed) => missed === 1).length
    expect(single).toBeGreaterThan(0)
    for (const other of ['catch.broken', 'needle.bent'])
      expect(alikeTo('pivots.loose', mm, other), other).toMatchObject({ machines: single, parted: single })
    expect(triedAt('pivots.loose', mm).alike.map(({ kind }) => kind)).toEqual(['catch.broken', 'needle.bent'])
  })
  test('too small to use up the margin show nothing', () => {
    expect(triedAt('pivots.loose', 0.1)).toMatchObject({ shown: 0, alike: [] })
  })
})

test('a bar that is a little tired is like one stiff needle', () => {
  const { alike } = triedAt('retainer.worn', 3)
  expect(alike.map(({ kind }) => kind)).toEqual(['needle.stiff'])
  expect(alike[0]!.machines).toBeGreaterThan(machinesTried / 2)
})

test('what one machine says of a fault that goes by chance stays out of what is certain', () => {
  expect(likenesses('pivots.loose', pattern)).toEqual([])
  expect(likenesses('pin.low', pattern).map(({ kind }) => kind)).not.toContain('pin.sticky')
})

describe('in words', () => {
  const sticky = triedAt('pin.sticky', 0.5)
  const low = alikeTo('pin.sticky', 0.5, 'pin.low')!
  test('says on how many machines it shows', () => {
    expect(shownWords({ ...sticky, shown: 43 })).toContain('shows on 43 of the 50 machines.')
    expect(shownWords({ ...sticky, shown: 50 })).toContain('shows on all 50 machines.')
    expect(shownWords({ ...sticky, shown: 0 })).toContain('shows on none of the 50 machines.')
  })
  test('says on how many another fault is the same at first, and what tells them apart', () => {
    const look = standardLooks[1]!
    expect(alikeWords({ ...low, machines: 43, parted: 38, apart: look })).toBe(
      'gives the same bed at first on 43; told apart later on 38, most often by a patterned card, pass 2 to the left.',
    )
    expect(alikeWords({ ...low, machines: 7, parted: 7, apart: look })).toContain(
      'told apart later on all of them, most often by',
    )
    expect(alikeWords({ ...low, machines: 1, parted: 1, apart: look })).toContain(
      'on 1; told apart later, most',
    )
    expect(alikeWords({ ...low, machines: 7, parted: 0, apart: null })).toBe(
      'gives the same bed at first on 7, and no look tells them apart.',
    )
    expect(alikeToChanceWords(sticky, low)).toMatch(
      /^pin 12 fails to rise at .* of the turns, tried on 50 machines: gives the same bed at first on/,
    )
  })
})
