import { describe, expect, test } from 'vitest'
import { classesOf, type Dictionary, dictionaryOf, type Entry } from '@/find/dictionary.ts'
import { entropy, nextLooks } from '@/find/next.ts'
import { hypothesesOf } from '@/find/hypotheses.ts'
import type { NotedPass, Query } from '@/find/query.ts'
import { slips } from '@/find/chances.ts'
import type { Finding } from '@/find/finding.ts'
import { bedsOf, pairsFound, singlesFound, stripAndPinPairs, withSlips } from '@/find/proof.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import type { TestCard } from '@/find/test-card.ts'
import { viewsOf } from '@/find/view.ts'
import { faultId, type FaultId, faultOf } from '@/mechanism/fault.ts'
import { firstPasses, randomCard } from './make.ts'
import { rowWith } from '../mechanism/trade.ts'

const card = randomCard(4, 5)
const views = viewsOf(card, firstPasses(4, 4, 500), usualPlace)
const few = (...ids: string[]): Dictionary => dictionaryOf(views, ids.map(faultOf))
const known: Query = { card, passes: [], slip: slips.rough, checks: [], ...usualPlace }
/** A query with one pass of a card, of which no needle was looked at. */
const afterPass = (rows: readonly number[], row: number, way: 1 | -1, speed = 500): Query => {
  const pass: NotedPass = { card: rows, row, way, speed, needles: '?'.repeat(200) }
  return { ...known, card: rows, passes: [pass] }
}
/** After a slow pass that ran freely, so that a fast one may be made. */
const afterSlow: Query = {
  ...known,
  passes: [{ card: null, row: null, way: 1, speed: 100, needles: '?'.repeat(200) }],
}
/** A finding that lists these whole machines, each with its chance and its faults' ids; none for a sound one. */
const findingOf = (...machines: readonly [number, ...FaultId[]][]): Finding => ({
  places: [],
  oil: { fresh: 1, old: 0, set: 0 },
  wear: { mean: 0, low: 0, high: 0 },
  together: [],
  unexplained: [],
  ranked: machines.map(([probability, ...ids]) => ({ probability, faults: ids.map((id) => [id]) })),
  isExact: true,
})
const lookFor = (finding: Finding, query = known) => nextLooks(query, finding)
const namesOf = (finding: Finding, of = known): string[] => lookFor(finding, of).map(({ check }) => check)

describe('what may be so', () => {
  test('is each machine that is listed, once for each cause that no look parts', () => {
    const finding: Finding = {
      ...findingOf(),
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

describe('entropy', () => {
  test('is nought where there is one thing or none, and takes shares of any sum', () => {
    expect([entropy([]), entropy([3]), entropy([0, 3, 0])]).toEqual([0, 0, 0])
    expect(entropy([1, 1])).toBeCloseTo(1, 12)
    expect(entropy([2, 2, 2, 2])).toBeCloseTo(2, 12)
    expect(entropy([1, 3])).toBeCloseTo(2 - 0.75 * Math.log2(3), 12)
  })
})

describe('the next check', () => {
  test('is by hand where every look shows the same', () => {
    const suspects = findingOf([0.5, 'pin.5.low'], [0.5, 'rocker.5.dead'])
    const next = lookFor(suspects)
    expect(next.map(({ check }) => check)).toEqual(['pins', 'reader'])
    expect(next[0]).toEqual({
      check: 'pins',
      bits: expect.closeTo(1, 12) as number,
      minutes: 3,
      opened: 'nothing',
      cautions: ['fingers', 'force'],
      pass: null,
      outcomes: [
        { kind: 'part', found: null },
        { kind: 'part', found: faultOf('pin.5.low') },
      ],
    })
    expect(next[1]).toMatchObject({ opened: 'reader', minutes: 90 })
  })

  test('is a look where that tells as much in less time', () => {
    const suspects = findingOf([0.5, 'pin.5.low'], [0.5, 'pin.6.low'])
    // Neither a blank card nor, without a pass before, the next row tells the two apart.
    expect(namesOf(suspects)).toEqual(['no-card', 'holes-right', 'holes-left', 'pins', 'reader'])
    const seen = afterPass([rowWith(5), 0, 0, 0], 4, -1)
    expect(namesOf(suspects, seen)[0]).toBe('next-row')
  })

  test('by a look says whether scattered needles come unasked, where three or more would', () => {
    const suspects = findingOf([0.5], [0.5, 'retainer.worn=12'])
    const bits = new Map(lookFor(suspects, afterSlow).map(({ check, bits: all }) => [check, all]))
    expect(bits.get('blank-right')).toBeCloseTo(1, 12)
    expect(bits.get('blank-fast')).toBeCloseTo(1, 12)
    expect(bits.get('retainer')).toBeCloseTo(1, 12)
    // A card of all holes leaves no needle plain that could be late, and no card neither.
    for (const check of ['holes-right', 'holes-left', 'no-card'] as const) expect(bits.has(check)).toBe(false)
  })

  test('sees two faults at once as the whole model has them', () => {
    const apart = findingOf([0.5, 'strip.3.seized', 'strip.4.over'], [0.5, 'strip.4.over'])
    const names = namesOf(apart)
    expect(names).toContain('holes-right')
    expect(names).not.toContain('blank-right')
    const bar = findingOf([0.5, 'strip.4.over', 'retainer.worn=12'], [0.5, 'strip.4.over'])
    expect(namesOf(bar)).toContain('blank-right')
    expect(namesOf(bar)).not.toContain('holes-right')
  })

  test('finds the likeliest fault itself where nothing is left to tell', () => {
    expect(namesOf(findingOf([1, 'strip.3.seized']))).toEqual(['strips', 'cover'])
    expect(namesOf(findingOf([1]))).toEqual([])
  })

  test('leaves out what tells less than a two-hundredth of a bit', () => {
    const suspects = findingOf([0.9997, 'pin.5.low'], [0.0003, 'strip.3.seized'])
    expect(namesOf(suspects)).toEqual(['pins', 'reader'])
    const likelier = findingOf([0.999, 'pin.5.low'], [0.001, 'strip.3.seized'])
    expect(namesOf(likelier)).toContain('strips')
  })

  test('by hand finds a part and what it does, but not how much', () => {
    const much = findingOf([0.5, 'strip.3.slow=100'], [0.5, 'strip.3.slow=1000'])
    const seen = afterPass([rowWith(3), 0], 1, 1, 100)
    const names = namesOf(much, seen)
    expect(names).toContain('row-fast')
    expect(names).not.toContain('strips')
    const which = findingOf([0.5, 'strip.3.slow=100'], [0.5, 'strip.4.slow=100'])
    expect(namesOf(which, seen)).toContain('strips')
  })
})

describe('a fast pass', () => {
  const suspects = findingOf([0.5], [0.5, 'strip.3.slow=150'])

  test('is never asked for before a slow one has run freely', () => {
    const before = namesOf(suspects, afterPass([rowWith(3), 0], 1, 1))
    expect(before[0]).toBe('row-slow')
    expect(before).not.toContain('row-fast')
    expect(before.filter((name) => name === 'row-slow')).toHaveLength(1)
    expect(namesOf(suspects, afterPass([rowWith(3), 0], 1, 1, 100))[0]).toBe('row-fast')
  })

  test('is not asked for at all where there is no row to pass slowly', () => {
    const names = namesOf(findingOf([0.5], [0.5, 'retainer.worn=12']))
    expect(names).toContain('blank-right')
    expect(names).not.toContain('blank-fast')
  })
})

describe('a needle that did not move', () => {
  const suspects = findingOf([0.6, 'needle.R3.gone'], [0.4, 'strip.3.seized'])
  const pass: NotedPass = {
    card,
    row: 1,
    way: 1,
    speed: 500,
    needles: `${'?'.repeat(102)}u${'?'.repeat(97)}`,
  }
  const seen: Query = { ...known, card, passes: [pass] }

  test('stops everything until somebody has looked for the piece', () => {
    expect(namesOf(suspects, seen)).toEqual(['broken-piece'])
    const looked = { ...seen, checks: [{ check: 'broken-piece' as const, found: null }] }
    const after = namesOf(suspects, looked)
    expect(after).not.toContain('broken-piece')
    expect(after.length).toBeGreaterThan(1)
  })
})

describe('the next check by hand', () => {
  test('finds the same two faults whichever was named first, and however much they are', () => {
    const pairs = findingOf(
      [0.5, 'strip.3.slow=1000', 'strip.4.over'],
      [0.5, 'strip.4.over', 'strip.3.slow=100'],
    )
    const names = namesOf(pairs, afterPass([rowWith(3), 0], 1, 1, 100))
    expect(names).toContain('row-fast')
    expect(names).not.toContain('strips')
  })

  test('comes the later the riskier it is, where it tells as much in as many minutes', () => {
    const names = namesOf(findingOf([0.5, 'card.locked'], [0.5, 'needle.R12.gone']))
    expect(names.filter((name) => ['stepping', 'needle', 'swap-needle'].includes(name))).toEqual([
      'stepping',
      'needle',
      'swap-needle',
    ])
  })

  test('comes before all that opens the machine, however little it tells', () => {
    const names = namesOf(
      findingOf([0.4995, 'catch.R3.broken'], [0.4995, 'needle.R3.bent'], [0.001, 'pin.5.low']),
    )
    expect(names).toContain('pins')
    expect(names.indexOf('pins')).toBeLessThan(names.indexOf('cover'))
    expect(names.slice(-2)).toEqual(['cover', 'reader'])
  })

  test('sees late needles beside another fault as scattered, and not which they are', () => {
    const bars = findingOf(
      [0.5, 'strip.4.over', 'retainer.worn=12'],
      [0.5, 'strip.4.over', 'retainer.worn=25'],
    )
    expect(namesOf(bars)).not.toContain('blank-right')
    expect(namesOf(bars)).not.toContain('blank-fast')
  })
})

describe('the proof that faults are found', () => {
  const dictionary = few('strip.3.seized', 'strip.4.over', 'pin.5.low', 'rocker.5.dead', 'belt.slack=0.2')
  const card4 = { dictionary, classes: classesOf(dictionary) } as unknown as TestCard

  test('counts each fault whose whole class is on top, and names the others', () => {
    // A slack that changes nothing is found as no fault at all.
    expect(singlesFound(card4, 0)).toEqual({ tried: 5, found: 4, missed: ['belt.slack=0.2'] })
    expect(singlesFound(card4, 0.9).found).toBe(0)
  })

  test('counts none of a class that is not the whole answer', () => {
    const of = (id: string): Entry => dictionary.entries.find((entry) => entry.id === id)!
    const found = (...ids: string[]) =>
      singlesFound({ dictionary, classes: [ids.map(of)] } as unknown as TestCard, 0)
    expect(found('strip.3.seized', 'strip.4.over').found).toBe(0)
    expect(found('pin.5.low', 'strip.3.seized')).toEqual({ tried: 2, found: 1, missed: ['strip.3.seized'] })
    expect(found('pin.5.low', 'rocker.5.dead').found).toBe(2)
  })

  test('counts pairs of which both are on top', () => {
    const pairs = stripAndPinPairs(dictionary)
    expect(pairs.map((pair) => pair.map(({ id }) => id).join(' '))).toEqual([
      'strip.3.seized pin.5.low',
      'strip.4.over pin.5.low',
    ])
    expect(pairsFound(card4, pairs)).toEqual({ tried: 2, found: 2, missed: [] })
    const slack = dictionary.entries.find(({ id }) => id === 'belt.slack=0.2')!
    expect(pairsFound(card4, [[slack, pairs[0]![1]]])).toEqual({
      tried: 1,
      found: 0,
      missed: ['belt.slack=0.2 + pin.5.low'],
    })
  })

  test('notes needles wrongly at the rate said, always as another letter, the same for the same seed', () => {
    const bed = 'spu'.repeat(2000)
    const [slipped] = withSlips([bed], 0.1, 7)
    const wrong = [...slipped!].filter((letter, n) => letter !== bed[n]).length
    expect(slipped).toMatch(/^[spu]{6000}$/)
    expect(Math.abs(wrong - 600)).toBeLessThan(5 * Math.sqrt(6000 * 0.1 * 0.9))
    expect(withSlips([bed], 0.1, 7)).toEqual([slipped])
    expect(withSlips([bed], 0.1, 8)).not.toEqual([slipped])
    expect(withSlips([bed], 0, 7)).toEqual([bed])
    // So that a proof can be repeated.
    expect(withSlips(['s'.repeat(20) + 'p'.repeat(20) + 'u'.repeat(20), 's'.repeat(20)], 0.5, 3)).toEqual([
      'ssuppsspssupusppsspupppuusssppsppppupppuuuuspuuspuupupupuupp',
      'ppspuuspsuusssssspps',
    ])
    const all = withSlips(['p'.repeat(1000)], 1, 7)[0]!
    expect(all).not.toContain('p')
    expect(Math.abs(all.replaceAll('s', '').length - 500)).toBeLessThan(80)
  })

  test('notes a bed as the whole model leaves it', () => {
    const [first] = bedsOf(dictionary, [faultOf('needle.R3.gone')], 1)
    expect(first).toMatch(/^[sp]{102}u[sp]{97}$/)
  })
})
