import { describe, expect, test } from 'vitest'
import { type Dictionary, dictionaryOf } from '@/find/dictionary.ts'
import { fitOf, observationOf } from '@/find/evidence.ts'
import { logSum } from '@/find/log-sum.ts'
import { shares, slips, weightsOf } from '@/find/priors.ts'
import { bedsOf } from '@/find/proof.ts'
import { rank, type RankedAnswer } from '@/find/rank.ts'
import { lateChance } from '@/find/shown.ts'
import { faultClassesOf } from '@/find/fault-class.ts'
import { unknownLog } from '@/find/unknown.ts'
import { viewsOf } from '@/find/view.ts'
import { columnOfNeedle, usualPlace } from '@/mechanism/bed.ts'
import { contradict, faultOf } from '@/mechanism/fault.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { firstPasses, randomCard } from './make.ts'
import { idsOf } from './ids.ts'

// Few faults, so that every sum can be counted by hand and quickly.
const card = randomCard(4, 5)
const views = viewsOf(card, firstPasses(4, 4, 500), usualPlace)
const few = (...ids: string[]): Dictionary => dictionaryOf(views, ids.map(faultOf))
const seen = (dictionary: Dictionary, ...ids: string[]): string[] => bedsOf(dictionary, ids.map(faultOf), 1)
const find = (suspects: readonly RankedAnswer[], ...ids: string[]): RankedAnswer | undefined =>
  suspects.find((suspect) => idsOf(suspect).includes([...ids].sort().join(' + ')))

/** Log of the chance of noted beds on a machine with faults, needle by needle; of a worn bar by its chance. */
const chanceOf = (dictionary: Dictionary, ids: readonly string[], beds: readonly string[]): number => {
  const bar = ids.find((id) => id.startsWith('retainer'))
  const late = bar === undefined ? 0 : lateChance(faultOf(bar).amount!, 500)
  const came = seen(dictionary, ...ids.filter((id) => id !== bar))
  const ofNote = (note: string, letter: string): number =>
    note === letter ? 1 - slips.rough : slips.rough / 2
  let log = 0
  for (const [n, bed] of beds.entries())
    for (const [needle, note] of [...bed].entries()) {
      if (note === '?') continue
      const letter = came[n]![needle]!
      const share = letter === 'p' ? late : 0
      log += Math.log(share * ofNote(note, 's') + (1 - share) * ofNote(note, letter))
    }
  return log
}

/** Log of a prior, by the shares and the weights of the faults. */
const priorOf = (dictionary: Dictionary, ids: readonly string[]): number => {
  const weights = weightsOf(dictionary.entries)
  const weight = ids
    .map((id) => weights[dictionary.entries.findIndex((entry) => entry.id === id)]!)
    .reduce((product, one) => product * one, 1)
  if (ids.length === 0) return Math.log(shares.sound)
  if (ids.length === 1) return Math.log(shares.one * weight)
  const square = weights.reduce((sum, one) => sum + one * one, 0)
  return Math.log((2 * shares.two * weight) / (1 - square))
}

describe('two faults at once', () => {
  test.each([
    ['on two strips', 'strip.3.seized', 'pin.5.low'],
    ['at two needles of one strip', 'catch.R3.broken', 'needle.R11.gone'],
    ['a strip and a needle of another', 'strip.3.seized', 'needle.R20.gone'],
    ['on one strip', 'pin.5.low', 'pin.13.low'],
    ['a slow strip and a pin of it', 'strip.3.slow=1000', 'pin.3.high'],
    ['a strip and the belt', 'belt.timing=8', 'strip.2.over'],
    ['a strip and the card', 'card.reversed', 'strip.7.seized'],
    ['the card and a pawl', 'card.reversed', 'pawl.right'],
    ['a strip and the row', 'pawl.right', 'strip.3.seized'],
    ['a worn bar and a strip', 'retainer.worn=12', 'strip.6.over'],
    ['a worn bar and a pin', 'retainer.worn=12', 'pin.4.low'],
    ['a worn bar and the row', 'retainer.worn=12', 'pawl.right'],
  ])('%s stand to a sound machine as a count by hand has it: %s and %s', (_, one, other) => {
    const dictionary = few(one, other, 'pin.20.low', 'needle.R5.gone', 'gate.1.low=0.5')
    const beds = seen(dictionary, one, other)
    const suspects = rank(dictionary, { beds, slip: slips.rough })
    const pair = find(suspects, one, other)!
    expect(suspects[0]).toBe(pair)
    const sound = find(suspects, 'sound')!
    const log = (ids: string[]): number => priorOf(dictionary, ids) + chanceOf(dictionary, ids, beds)
    const byHand = log([one, other]) - log([])
    // A worn bar's late butts are drawn, those of the prediction are chances; the rest is the same sum.
    expect(Math.log(pair.probability) - Math.log(sound.probability || Number.MIN_VALUE)).toBeCloseTo(
      sound.probability > 0 ? byHand : Math.log(pair.probability) - Math.log(Number.MIN_VALUE),
      6,
    )
    const single = find(suspects, one)!
    if (single.probability > 0)
      expect(Math.log(pair.probability / single.probability)).toBeCloseTo(log([one, other]) - log([one]), 6)
  })

  const many = [
    ...[
      'strip.3.seized',
      'strip.3.over',
      'strip.6.over',
      'pin.3.high',
      'pin.5.low',
      'pin.14.high',
      'rocker.5.dead',
    ],
    ...[
      'needle.R5.gone',
      'needle.R13.bent',
      'catch.R13.broken',
      'belt.timing=8',
      'card.reversed',
      'pawl.right',
    ],
    ...['retainer.worn=12', 'retainer.worn=6'],
  ]

  test.each([
    [['strip.3.seized', 'pin.5.low']],
    [['strip.6.over', 'pin.3.high']],
    [['retainer.worn=12', 'strip.6.over']],
    [['retainer.worn=6', 'pin.14.high']],
    [['belt.timing=8', 'strip.3.over']],
    [['pin.5.low', 'pin.14.high']],
    [['strip.6.over', 'needle.R13.bent', 'pin.5.low']],
  ])('where %j are broken all stand to the likeliest answer as a count by hand has it', (broken) => {
    const dictionary = few(...many)
    const beds = seen(dictionary, ...broken)
    const [first, ...others] = rank(dictionary, { beds, slip: slips.rough }).filter(
      ({ kind }) => kind !== 'unknown',
    )
    const byHand = ({ ways }: RankedAnswer): number => {
      const ids = ways.length === 0 ? [[]] : ways.map((way) => way.map(({ id }) => id))
      return logSum(ids.map((way) => priorOf(dictionary, way))) + chanceOf(dictionary, ids[0]!, beds)
    }
    const pairs = [first!, ...others].filter(({ ways }) => ways.some((way) => way.length === 2))
    expect(pairs.length).toBeGreaterThan(0)
    for (const other of others.filter(({ probability }) => probability > 1e-200))
      expect(Math.log(other.probability / first!.probability)).toBeCloseTo(byHand(other) - byHand(first!), 6)
  })

  test('are never two that can’t be together', () => {
    const dictionary = few('strip.3.seized', 'strip.3.over', 'strip.3.slow=1000', 'pin.3.low', 'pin.3.high')
    const beds = seen(dictionary, 'strip.3.seized').map((bed, n) => (n === 0 ? 's'.repeat(200) : bed))
    const pairs = rank(dictionary, { beds, slip: slips.rough }).flatMap(({ ways }) =>
      ways.filter((way) => way.length === 2),
    )
    for (const [one, other] of pairs) expect(contradict(one!.fault, other!.fault)).toBe(false)
  })

  test('are not looked for where one explains all that was seen', () => {
    const dictionary = few('strip.3.seized', 'pin.5.low', 'pin.3.low', 'belt.timing=8')
    const suspects = rank(dictionary, { beds: seen(dictionary, 'strip.3.seized'), slip: slips.rough })
    expect(suspects.flatMap(({ ways }) => ways).every((way) => way.length === 1)).toBe(true)
    expect(suspects).toHaveLength(6)
  })
})

describe('a single fault', () => {
  test.each([['strip.3.seized'], ['pin.5.low'], ['needle.R20.gone'], ['belt.timing=8'], ['pawl.right']])(
    '%s stands to a sound machine as a count by hand has it',
    (id) => {
      const dictionary = few(id, 'pin.20.low', 'gate.1.low=0.5')
      // Half of the bed only was looked at.
      const beds = seen(dictionary, id).map((bed) => `${'?'.repeat(180)}${bed.slice(180)}`)
      const suspects = rank(dictionary, { beds, slip: slips.rough })
      const log = (ids: string[]): number => priorOf(dictionary, ids) + chanceOf(dictionary, ids, beds)
      const one = find(suspects, id)!
      expect(Math.log(one.probability / find(suspects, 'sound')!.probability)).toBeCloseTo(
        logSum(idsOf(one).map((own) => log([own]))) - log([]),
        8,
      )
    },
  )

  test('with others that show the same is one answer of all their ways, as likely as they are together', () => {
    const dictionary = few('pin.5.low', 'rocker.5.dead', 'pin.6.low')
    const beds = seen(dictionary, 'pin.5.low')
    const [first] = rank(dictionary, { beds, slip: slips.rough })
    expect(idsOf(first!)).toEqual(['pin.5.low', 'rocker.5.dead'])
    const log = (id: string): number => priorOf(dictionary, [id]) + chanceOf(dictionary, [id], beds)
    const sound = find(rank(dictionary, { beds, slip: slips.rough }), 'pin.6.low')!
    expect(Math.log(first!.probability / sound.probability)).toBeCloseTo(
      logSum([log('pin.5.low'), log('rocker.5.dead')]) - log('pin.6.low'),
      8,
    )
  })
})

describe('something unknown', () => {
  test('comes on top of the likeliest answers without chance, each by its needles left unexplained', () => {
    const dictionary = few('strip.3.seized', 'pin.5.low', 'retainer.worn=12')
    const beds = seen(dictionary, 'strip.3.seized').map((bed) => bed.replace(/^.{20}/, 'u'.repeat(20)))
    const suspects = rank(dictionary, { beds, slip: slips.rough })
    const observations = dictionary.settings.map((setting, n) =>
      observationOf(setting, beds[n]!, slips.rough),
    )
    const firm = suspects.filter(
      ({ kind, shown }) => kind !== 'unknown' && shown!.every(({ chance }) => chance === 0),
    )
    const logs = firm.map(({ ways, shown }) => {
      const ids = ways.map((way) => way.map(({ id }) => id))
      const prior =
        ids.length === 0 ? priorOf(dictionary, []) : logSum(ids.map((way) => priorOf(dictionary, way)))
      return prior + unknownLog(fitOf(observations, shown!))
    })
    const unknown = find(suspects, 'unknown')!
    const seized = find(suspects, 'strip.3.seized')!
    const byHand =
      Math.log(shares.unknown) +
      logSum(logs) -
      priorOf(dictionary, ['strip.3.seized']) -
      chanceOf(dictionary, ['strip.3.seized'], beds)
    expect(Math.log(unknown.probability / seized.probability)).toBeCloseTo(byHand, 6)
    expect(unknown).toMatchObject({ shown: null, fit: null, ways: [] })
  })
})

describe('every answer', () => {
  const dictionary = few('strip.3.seized', 'pin.5.low', 'strip.4.seized', 'retainer.worn=12')
  const ranked = (): RankedAnswer[] =>
    rank(dictionary, { beds: seen(dictionary, 'strip.3.seized', 'pin.5.low'), slip: slips.rough })

  test('has its needles counted, unless it is next to impossible', () => {
    const suspects = ranked()
    for (const { probability, shown, fit } of suspects)
      expect(fit !== null).toBe(shown !== null && Math.log(probability) > -14)
    expect(suspects.some(({ fit }) => fit === null)).toBe(true)
  })

  test('is said with what it shows', () => {
    const suspects = ranked()
    expect(find(suspects, 'sound')!.shown!.map(({ changed, chance }) => [changed.length, chance])).toEqual(
      views.map(() => [0, 0]),
    )
    const pair = find(suspects, 'strip.3.seized', 'pin.5.low')!
    for (const [n, { changed }] of pair.shown!.entries()) {
      const alone = ['strip.3.seized', 'pin.5.low'].map((id) => find(suspects, id)!.shown![n]!.changed.length)
      expect(changed.length).toBe(alone[0]! + alone[1]!)
      expect([...changed]).toEqual([...changed].sort((a, b) => a - b))
    }
  })

  test('takes another slip where one is said, and no bed as one that was not looked at', () => {
    const beds = seen(dictionary).map((bed) => bed.replace(/^.{10}/, 'u'.repeat(10)))
    const soundAt = (slip: number): number => find(rank(dictionary, { beds, slip }), 'sound')!.probability
    expect(soundAt(0.05)).toBeGreaterThan(2 * soundAt(0.0001))
    expect(
      rank(dictionary, { beds: [], slip: slips.rough }).find(({ kind }) => kind === 'sound')!.probability,
    ).toBeCloseTo(
      rank(dictionary, { beds: views.map(() => '?'.repeat(200)), slip: slips.rough }).find(
        ({ kind }) => kind === 'sound',
      )!.probability,
      12,
    )
  })
})

describe('faults in groups that the evidence can’t tell apart', () => {
  const dictionary = few(
    'pin.5.low',
    'rocker.5.dead',
    'pin.6.low',
    'catch.R5.broken',
    'needle.R5.bent',
    'catch.R13.broken',
  )
  const weights = weightsOf(dictionary.entries)
  const faultClasses = (beds: readonly string[]): string[] =>
    faultClassesOf(
      dictionary.entries,
      weights,
      dictionary.settings.map((setting, n) => observationOf(setting, beds[n]!, slips.rough)),
    ).map(({ entries }) => entries.map(({ id }) => id).join(' '))

  test('are those with one prediction that reach equally far', () => {
    expect(faultClasses(seen(dictionary))).toEqual([
      'pin.5.low rocker.5.dead',
      'pin.6.low',
      'catch.R5.broken needle.R5.bent',
      'catch.R13.broken',
    ])
  })

  test('are larger where less was looked at, but never of two strips or two needles', () => {
    expect(faultClasses(views.map(() => '?'.repeat(200)))).toEqual([
      'pin.5.low rocker.5.dead',
      'pin.6.low',
      'catch.R5.broken needle.R5.bent',
      'catch.R13.broken',
    ])
    const row = few('pawl.right', 'card.locked', 'belt.timing=3', 'gate.1.low=0.5')
    const unseen = row.settings.map((setting) => observationOf(setting, '', slips.rough))
    expect(
      faultClassesOf(row.entries, weightsOf(row.entries), unseen).map(({ entries, weight, gain, key }) => [
        entries.length,
        weight > 0,
        gain,
        key.trim(),
      ]),
    ).toEqual([
      [2, true, 0, ''],
      [2, true, 0, ''],
    ])
  })

  test('weigh as much together as each of them', () => {
    const all = faultClassesOf(
      dictionary.entries,
      weights,
      dictionary.settings.map((setting) => observationOf(setting, '', slips.rough)),
    )
    expect(all.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12)
    expect(all[0]!.weight).toBeCloseTo(weights[0]! + weights[1]!, 12)
  })
})

describe('what is worked out', () => {
  const one = viewsOf([0xffffff, 0xffffff], firstPasses(2, 1, 500), usualPlace)
  const of = (...ids: string[]): Dictionary => dictionaryOf(one, ids.map(faultOf))
  const waysIn = (suspects: readonly RankedAnswer[]): string[] => suspects.flatMap(idsOf)

  test('is no two at once where one explains all, however poorly others would', () => {
    const dictionary = of('strip.3.seized', 'catch.R3.broken', 'catch.R11.broken')
    const suspects = rank(dictionary, { beds: seen(dictionary, 'strip.3.seized'), slip: slips.rough })
    expect(waysIn(suspects).filter((way) => way.includes('+'))).toEqual([])
    const both = rank(dictionary, {
      beds: seen(dictionary, 'catch.R3.broken', 'catch.R11.broken'),
      slip: slips.rough,
    })
    expect(waysIn(both)).toContain('catch.R11.broken + catch.R3.broken')
  })

  test('on one strip is so only where slips explain what is left no longer', () => {
    const dictionary = of('strip.3.seized', 'needle.R3.gone')
    const [bed] = seen(dictionary, 'strip.3.seized')
    const pair = 'needle.R3.gone + strip.3.seized'
    const with3 = `${bed!.slice(0, 102)}u${bed!.slice(103)}`
    expect(waysIn(rank(dictionary, { beds: [with3], slip: slips.rough }))).not.toContain(pair)
    expect(waysIn(rank(dictionary, { beds: [with3], slip: 1e-6 }))).toContain(pair)
  })

  test('on the whole bed is so only where slips explain what is left no longer', () => {
    const dictionary = dictionaryOf(viewsOf([0xfff000], firstPasses(1, 1, 500), usualPlace), [
      faultOf('card.reversed'),
      faultOf('pin.20.low'),
    ])
    const [bed] = seen(dictionary, 'card.reversed', 'pin.20.low')
    /** All needles but those of column 20 after the first so many. */
    const lookedAt = (count: number): string => {
      let left = count
      return Array.from(bed!, (letter, n) =>
        columnOfNeedle(toNeedle(n), usualPlace) !== 20 || left-- > 0 ? letter : '?',
      ).join('')
    }
    const pair = 'card.reversed + pin.20.low'
    expect(waysIn(rank(dictionary, { beds: [lookedAt(2)], slip: slips.rough }))).not.toContain(pair)
    expect(waysIn(rank(dictionary, { beds: [lookedAt(3)], slip: slips.rough }))).toContain(pair)
  })

  test('gives each answer of two at once its own look', () => {
    const dictionary = of('strip.3.seized', 'pin.5.low', 'rocker.5.dead', 'pin.7.low')
    const [bed] = seen(dictionary, 'strip.3.seized', 'pin.5.low', 'pin.7.low')
    const suspects = rank(dictionary, { beds: [bed!.slice(0, 60).padEnd(200, '?')], slip: slips.rough })
    const pairs = suspects.map(idsOf).filter(([way]) => way!.includes('+'))
    expect(pairs).toContainEqual(['pin.5.low + strip.3.seized', 'rocker.5.dead + strip.3.seized'])
    expect(pairs).toContainEqual(['pin.7.low + strip.3.seized'])
  })
})

test('something unknown comes on top of the twenty likeliest answers', () => {
  const dictionary = dictionaryOf(
    viewsOf([0xffffff], firstPasses(1, 1, 500), usualPlace),
    Array.from({ length: 24 }, (_, n) => faultOf(`pin.${n + 1}.low`)),
  )
  // Few needles, so that one more or less against an answer counts for little; of columns 9 to 20 two each.
  const beds = [`${'u'.repeat(12)}${'s'.repeat(36)}`]
  const suspects = rank(dictionary, { beds, slip: slips.rough })
  const observations = dictionary.settings.map((setting, n) => observationOf(setting, beds[n]!, slips.rough))
  const logs = suspects
    .filter(({ kind }) => kind !== 'unknown')
    .slice(0, 20)
    .map(({ ways, shown }) => {
      const all = ways.length === 0 ? [[]] : ways.map((way) => way.map(({ id }) => id))
      return logSum(all.map((way) => priorOf(dictionary, way))) + unknownLog(fitOf(observations, shown!))
    })
  expect(suspects.length).toBeGreaterThan(22)
  const soundLog = 12 * Math.log(slips.rough / 2) + 36 * Math.log(1 - slips.rough)
  const ratio = find(suspects, 'unknown')!.probability / find(suspects, 'sound')!.probability
  expect(Math.log(ratio)).toBeCloseTo(
    Math.log(shares.unknown) + logSum(logs) - priorOf(dictionary, []) - soundLog,
    9,
  )
})

test('faults are one where the views that part them were not looked at', () => {
  const dictionary = dictionaryOf(viewsOf([0xffffff, 0xffffff], firstPasses(2, 2, 500), usualPlace), [
    faultOf('pin.5.low'),
    faultOf('card.blocked.1.5'),
  ])
  const bed = 's'.repeat(200)
  const unitsIn = (...beds: string[]): string[] =>
    faultClassesOf(
      dictionary.entries,
      weightsOf(dictionary.entries),
      dictionary.settings.map((setting, n) => observationOf(setting, beds[n]!, slips.rough)),
    ).map(({ entries }) => entries.map(({ id }) => id).join(' '))
  expect(unitsIn(bed, bed)).toEqual(['pin.5.low', 'card.blocked.1.5'])
  expect(unitsIn(bed, '?')).toEqual(['pin.5.low card.blocked.1.5'])
  expect(unitsIn('?', bed)).toEqual(['pin.5.low', 'card.blocked.1.5'])
})
