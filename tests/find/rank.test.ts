import { usualPlace } from '@/mechanism/bed.ts'
import { describe, expect, test } from 'vitest'
import { dictionaryOf } from '@/find/dictionary.ts'
import { logSum } from '@/find/log-sum.ts'
import { common, shares, slips, weightsOf } from '@/find/priors.ts'
import { bedsOf, withSlips } from '@/find/proof.ts'
import { rank } from '@/find/rank.ts'
import { slipsOrMore } from '@/find/unknown.ts'
import { viewsOf } from '@/find/view.ts'
import { faultOf } from '@/mechanism/fault.ts'
import { faultKinds } from '@/mechanism/fault-kinds.ts'
import { firstPasses, numbers, randomCard } from './make.ts'
import { idsOf } from './ids.ts'

const card = randomCard(8, 21)
const dictionary = dictionaryOf(viewsOf(card, firstPasses(8, 8, 500), usualPlace))
const top = (...ids: string[]) =>
  rank(dictionary, { beds: bedsOf(dictionary, ids.map(faultOf), 1), slip: slips.rough })[0]!

describe('priors', () => {
  test('are shares, over kinds as the table has them and evenly within a kind', () => {
    const weights = weightsOf(dictionary.entries)
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12)
    expect(Object.values(shares).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12)
    const of = (kind: string) =>
      dictionary.entries.reduce((sum, entry, n) => sum + (entry.fault.kind === kind ? weights[n]! : 0), 0)
    expect(of('strip.seized') / of('rocker.dead')).toBeCloseTo(
      common['strip.seized'] / common['rocker.dead'],
      9,
    )
    expect(Object.keys(common).sort()).toEqual(Object.keys(faultKinds).sort())
  })
})

describe('the ranking', () => {
  test('adds up to 1, the likeliest first, whatever is seen', () => {
    for (const ids of [[], ['strip.3.seized'], ['belt.timing=8', 'strip.2.over']]) {
      const suspects = rank(dictionary, {
        beds: withSlips(bedsOf(dictionary, ids.map(faultOf), 1), 0.05, 3),
        slip: slips.rough,
      })
      expect(suspects.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9)
      const sorted = suspects.map(({ probability }) => probability)
      expect(sorted).toEqual([...sorted].sort((a, b) => b - a))
    }
  }, 30_000)

  test('says that a sound machine is sound', () => {
    expect(top()).toMatchObject({ kind: 'sound', ways: [] })
    expect(top().probability).toBeGreaterThan(0.9)
  })

  test('weighs nothing where nothing was looked at', () => {
    const suspects = rank(dictionary, {
      beds: dictionary.views.map(() => '?'.repeat(200)),
      slip: slips.rough,
    })
    const chanceOf = (kind: string) =>
      suspects.reduce((sum, suspect) => sum + (suspect.kind === kind ? suspect.probability : 0), 0)
    expect(suspects.filter(({ kind }) => kind === 'faults')).toHaveLength(1)
    expect(chanceOf('faults') / chanceOf('sound')).toBeCloseTo(shares.one / shares.sound, 9)
  })

  test('is Bayes’ rule: each single fault stands to the sound machine as a count by hand has it', () => {
    const next = numbers(8)
    const seen = withSlips(bedsOf(dictionary, [faultOf('pin.5.over')], 1), 0.02, 4)
    const beds = seen.map((bed) => [...bed].map((letter) => (next() < 0.4 ? '?' : letter)).join(''))
    const chanceOf = (came: readonly string[]): number => {
      let log = 0
      for (const [n, bed] of beds.entries())
        for (const [index, letter] of [...bed].entries())
          if (letter !== '?') log += Math.log(letter === came[n]![index] ? 1 - slips.rough : slips.rough / 2)
      return log
    }
    const sound = chanceOf(bedsOf(dictionary, [], 1))
    const weights = weightsOf(dictionary.entries)
    const suspects = rank(dictionary, { beds, slip: slips.rough })
    const soundNow = suspects.find(({ kind }) => kind === 'sound')!.probability
    let counted = 0
    for (const { kind, ways, probability } of suspects) {
      if (kind !== 'faults' || ways.some((way) => way.length > 1) || probability < 1e-250) continue
      if (ways.some(([entry]) => entry!.reach.of === 'chance')) continue
      const byHand = ways.map(([entry]) => {
        const weight = weights[dictionary.entries.indexOf(entry!)]!
        return Math.log(shares.one * weight) + chanceOf(bedsOf(dictionary, [entry!.fault], 1))
      })
      expect(Math.log(probability / soundNow)).toBeCloseTo(logSum(byHand) - sound - Math.log(shares.sound), 6)
      counted++
    }
    expect(counted).toBeGreaterThan(500)
  }, 20_000)

  test('takes each needle of a worn retainer bar as late by chance, by itself', () => {
    for (const amount of [6, 12, 25]) {
      const beds = bedsOf(dictionary, [faultOf(`retainer.worn=${amount}`)], 17)
      expect(idsOf(rank(dictionary, { beds, slip: slips.rough })[0]!)).toEqual([`retainer.worn=${amount}`])
    }
  })

  test('counts the needles that an answer explains, and those against it', () => {
    const suspect = top('strip.3.seized')
    expect(idsOf(suspect)).toEqual(['strip.3.seized'])
    const beds = bedsOf(dictionary, [faultOf('strip.3.seized')], 1).join('')
    const sound = bedsOf(dictionary, [], 1).join('')
    const departures = [...beds].filter((letter, n) => letter !== sound[n]).length
    expect(departures).toBeGreaterThan(20)
    expect(suspect.fit).toEqual({ departures, explained: departures, against: 0, looked: 1600 })
  })
})

describe('two faults at once', () => {
  test.each([
    ['strip.3.seized', 'pin.5.low'],
    ['catch.R3.broken', 'needle.L40.gone'],
    ['strip.3.slow', 'pin.11.low'],
    ['strip.6.over', 'retainer.worn=12'],
    ['pawl.right', 'strip.3.seized'],
    ['belt.timing=8', 'strip.2.over'],
    ['card.reversed', 'pin.7.high'],
  ])('%s and %s are found', (...ids) => {
    const suspect = top(...ids)
    expect(suspect.kind).toBe('faults')
    expect(idsOf(suspect)).toContain([...ids].sort().join(' + '))
  })

  test.each([
    ['strip.3.seized', 'pin.5.low'],
    ['strip.3.slow', 'pin.11.low'],
  ])('%s and %s stand to the first alone as a count by hand has it', (...ids) => {
    const beds = withSlips(bedsOf(dictionary, ids.map(faultOf), 1), 0.02, 9)
    const chanceOf = (came: readonly string[]): number =>
      [...came.join('')].reduce(
        (log, letter, n) => log + Math.log(letter === beds.join('')[n] ? 1 - slips.rough : slips.rough / 2),
        0,
      )
    const weights = weightsOf(dictionary.entries)
    const square = weights.reduce((sum, weight) => sum + weight ** 2, 0)
    const suspects = rank(dictionary, { beds, slip: slips.rough })
    const pair = suspects.find((suspect) => idsOf(suspect).includes([...ids].sort().join(' + ')))!
    const single = suspects.find((suspect) => idsOf(suspect)[0] === ids[0])!
    const weightOf = (way: readonly unknown[]): number =>
      way.reduce<number>(
        (product, one) => product * weights[dictionary.entries.findIndex((e) => e === one)]!,
        1,
      )
    const prior = (2 * shares.two * pair.ways.reduce((sum, way) => sum + weightOf(way), 0)) / (1 - square)
    const byHand =
      Math.log(prior) +
      chanceOf(bedsOf(dictionary, ids.map(faultOf), 1)) -
      Math.log(shares.one * weightOf(single.ways[0]!)) -
      chanceOf(bedsOf(dictionary, [faultOf(ids[0])], 1))
    expect(Math.log(pair.probability / single.probability)).toBeCloseTo(byHand, 6)
  })

  test('are not made of one', () => {
    expect(top('strip.3.seized').ways).toHaveLength(1)
    expect(top('needle.R20.gone').ways).toHaveLength(1)
  })
})

test('says so where nothing explains what was seen', () => {
  const next = numbers(2)
  const beds = dictionary.views.map(() =>
    Array.from({ length: 200 }, () => (next() < 0.5 ? 's' : 'p')).join(''),
  )
  const [first] = rank(dictionary, { beds, slip: slips.rough })
  expect(first).toMatchObject({ kind: 'unknown', ways: [], shown: null })
  expect(first!.probability).toBeGreaterThan(0.99)
})

test('the chance of so many slips is the binomial tail', () => {
  const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n, k - 1) * (n - k + 1)) / k)
  for (const [count, trials, slip] of [
    [0, 8, 0.01],
    [3, 8, 0.01],
    [2, 200, 0.02],
    [8, 8, 0.3],
  ] as const) {
    let tail = 0
    for (let k = count; k <= trials; k++) tail += choose(trials, k) * slip ** k * (1 - slip) ** (trials - k)
    expect(slipsOrMore(count, trials, slip)).toBeCloseTo(tail, 12)
  }
})
