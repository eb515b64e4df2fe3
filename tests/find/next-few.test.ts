import { describe, expect, test } from 'vitest'

import { type CheckId, checkOf } from '@/find/checks.ts'
import { inOrder, type Rated } from '@/find/look-order.ts'
import { entropy, noisyBits, sharedBits } from '@/find/shared-bits.ts'
import { hypothesesOf } from '@/find/hypotheses.ts'
import type { Query } from '@/find/query.ts'
import { slips } from '@/find/chances.ts'
import type { Finding } from '@/find/finding.ts'
import { bedsOf } from '@/find/kinds-found.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import { viewsOf } from '@/find/view.ts'
import { faultId } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { findingOf } from './finding-of.ts'
import { firstPasses, numbers, randomCard } from './make.ts'

const card = randomCard(4, 5)
const views = viewsOf(card, firstPasses(4, 4, 500), usualPlace)
const known: Query = { card, passes: [], slip: slips.rough, checks: [], ...usualPlace }
/** A look by hand or eye that settles so many bits; a pass at a speed. */
const part = (id: CheckId, bits: number, shows = 0): Rated => ({
  check: checkOf(id),
  view: null,
  bits,
  minutes: checkOf(id).minutes,
  shows,
})
const pass = (id: CheckId, bits: number, speed = 500, minutes = checkOf(id).minutes): Rated => ({
  ...part(id, bits),
  minutes,
  view: { card, pass: 1, speed, shift: 0, ...usualPlace },
})
const order = (rated: readonly Rated[], query = known, finding = findingOf([])): string[] =>
  inOrder(query, finding, rated).map(({ check, view }) => (view ? `${check.id} ${view.speed}` : check.id))
const seenAt = (speed: number, needles = '?'.repeat(200)): Query => ({
  ...known,
  passes: [{ card, row: 1, way: 1, speed, needles }],
})

describe('what may be so', () => {
  test('is each machine that is listed, once for each cause that no look parts', () => {
    const finding: Finding = {
      ...findingOf([]),
      ranked: [
        { probability: 0.6, faults: [['pin.5.low', 'rocker.5.dead'], ['strip.3.seized']] },
        { probability: 0.15, faults: [['card.out']] },
        { probability: 0.05, faults: [] },
        { probability: 0.2, faults: null },
      ],
    }
    expect(
      hypothesesOf(finding).map(({ faults, hasCard }) => [faults.map(faultId).join(' '), hasCard]),
    ).toEqual([
      ['pin.5.low strip.3.seized', true],
      ['rocker.5.dead strip.3.seized', true],
      ['', false],
      ['', true],
    ])
    expect(hypothesesOf(finding).map(({ probability }) => probability)).toEqual(
      [0.3, 0.3, 0.15, 0.05].map((share) => expect.closeTo(share / 0.8, 12) as number),
    )
  })
})

describe('bits', () => {
  test('of entropy are 0 where there is one thing or none, and take shares of any sum', () => {
    expect([entropy([]), entropy([3]), entropy([0, 3, 0])]).toEqual([0, 0, 0])
    expect(entropy([1, 1])).toBeCloseTo(1, 12)
    expect(entropy([2, 2, 2, 2])).toBeCloseTo(2, 12)
    expect(entropy([1, 3])).toBeCloseTo(2 - 0.75 * Math.log2(3), 12)
  })

  test('that answers say about labels are all of them where they go together, and none where they do not', () => {
    const next = numbers(3)
    const labels = Array.from({ length: 4000 }, () => Math.floor(next() * 4))
    const apart = Array.from({ length: 4000 }, () => Math.floor(next() * 3))
    expect(sharedBits(labels, labels, 4)).toBeCloseTo(2, 1)
    expect(
      sharedBits(
        labels,
        labels.map((label) => label % 2),
        2,
      ),
    ).toBeCloseTo(1, 1)
    expect(sharedBits(labels, apart, 3)).toBeLessThan(0.002)
    expect(
      sharedBits(
        labels,
        labels.map(() => 2),
        3,
      ),
    ).toBe(0)
  })

  test('of few draws are no more than of many: what chance alone makes of them is taken off', () => {
    const next = numbers(5)
    const few = Array.from({ length: 300 }, () =>
      sharedBits(
        Array.from({ length: 160 }, () => Math.floor(next() * 4)),
        Array.from({ length: 160 }, () => Math.floor(next() * 2)),
        2,
      ),
    )
    expect(few.reduce((sum, bits) => sum + bits, 0) / few.length).toBeLessThan(0.006)
  })

  test('of an answer that may be wrong are fewer, by what the error hides', () => {
    expect(noisyBits([1, 1], 0)).toBeCloseTo(1, 12)
    expect(noisyBits([1, 1], 0.5)).toBeCloseTo(0, 12)
    // A binary symmetric channel of 0.11 has half a bit (Shannon 1948).
    expect(noisyBits([1, 1], 0.11)).toBeCloseTo(0.5, 3)
    expect(noisyBits([2, 1, 1], 0.05)).toBeLessThan(noisyBits([2, 1, 1], 0.01))
    expect([noisyBits([1], 0.1), noisyBits([], 0.1), noisyBits([1, 0], 0.1)]).toEqual([0, 0, 0])
  })
})

describe('the order of looks', () => {
  test('is by bits for the minutes and the risk, of as much the shorter first', () => {
    expect(order([part('belt', 1), part('card', 1), part('retainer', 1)])).toEqual([
      'card',
      'retainer',
      'belt',
    ])
    expect(order([pass('holes-left', 1), pass('next-row', 0.25)])).toEqual(['next-row 500', 'holes-left 500'])
  })

  test('has one look of each check, at the speed that settles most', () => {
    expect(order([pass('next-row', 0.5), pass('next-row', 0.75, 90)])).toEqual(['next-row 90'])
  })

  test('has what opens after all that does not, the card reader last, however much they settle', () => {
    const rated = [part('reader', 9), part('cover', 9), part('strips', 9), part('pins', 0.03)]
    expect(order(rated)).toEqual(['pins', 'strips', 'cover', 'reader'])
  })

  test('opens first where nothing closed gives two hundredths of a bit, but for the card reader', () => {
    const rated = [part('reader', 900), part('strips', 1), part('pins', 0.019)]
    expect(order(rated)).toEqual(['strips', 'pins', 'reader'])
  })

  test('leaves out what settles less than a two-hundredth of a bit, and what was made', () => {
    expect(order([part('pins', 0.0049), part('card', 0.005)])).toEqual(['card'])
    const made = { ...known, checks: [{ check: 'card' as const, found: null }] }
    expect(order([part('pins', 1), part('card', 1)], made)).toEqual(['pins'])
  })

  test('has first what shows a place that is nearly sure, even where that settles nothing', () => {
    const rated = [pass('next-row', 2), part('retainer', 0, 0.99), part('pins', 1, 0.8)]
    expect(order(rated)).toEqual(['retainer', 'next-row 500', 'pins'])
    expect(order([pass('next-row', 2), part('strips', 1, 0.99)])).toEqual(['next-row 500', 'strips'])
  })

  test('where nothing is left to settle has what would show a likely place, and nothing where none is', () => {
    expect(order([pass('next-row', 0), part('strips', 0, 0.97), part('pins', 0, 0.1)])).toEqual(['strips'])
    expect(order([pass('next-row', 0), part('pins', 0, 0.1)])).toEqual([])
  })

  test('with old oil has first the cheap look that settles most', () => {
    const rated = [pass('next-row', 1), pass('holes-right', 3), part('pins', 4), part('strips', 9)]
    expect(order(rated)[0]).toBe('next-row 500')
    const old = findingOf([], { oil: { fresh: 0.4, old: 0.3, set: 0.3 } })
    expect(order(rated, known, old)).toEqual(['holes-right 500', 'next-row 500', 'pins', 'strips'])
  })
})

describe('a fast pass', () => {
  const rated = [
    pass('row-slow', 0, 90),
    pass('row-fast', 1, 900),
    pass('next-row', 0.2),
    pass('next-row', 0.9, 900),
  ]

  test('is never asked for before a slow one has run freely', () => {
    for (const query of [known, seenAt(500), seenAt(900)])
      expect(order(rated, query)).toEqual(['row-slow 90', 'next-row 500'])
    expect(order(rated, seenAt(90))).toEqual(['next-row 900', 'row-fast 900'])
  })

  test('makes the slow one before it worth making by the time of both', () => {
    expect(order([...rated, pass('blank-left', 3)], known)[0]).toBe('blank-left 500')
    expect(inOrder(known, findingOf([]), rated)[0]!.bits).toBe(0)
  })

  test('may have any slow pass before it where there is no row, and is not asked for where there is none', () => {
    expect(order([pass('blank-left', 1, 900), pass('blank-left', 0.1, 90)])).toEqual(['blank-left 90'])
    expect(order([pass('blank-left', 1, 900), part('pins', 1)])).toEqual(['pins'])
  })
})

describe('a needle that did not move', () => {
  const rated = [pass('next-row', 2), part('broken-piece', 0), part('retainer', 1, 0.99)]
  const unmoved = seenAt(500, `${'?'.repeat(102)}u${'?'.repeat(97)}`)

  test('stops everything until somebody has looked for the piece', () => {
    expect(order(rated, unmoved)).toEqual(['broken-piece'])
    const looked = { ...unmoved, checks: [{ check: 'broken-piece' as const, found: null }] }
    expect(order(rated, looked)).toEqual(['retainer', 'next-row 500'])
  })
})

describe('the beds of a dictionary', () => {
  test('are as the whole model leaves them', () => {
    const [first] = bedsOf({ views }, [faultOf('needle.R3.gone')], 1)
    expect(first).toMatch(/^[sp]{102}u[sp]{97}$/)
  })
})
