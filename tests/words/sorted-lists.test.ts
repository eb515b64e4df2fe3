import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { faultsRow } from '@/link/faults-row.ts'
import { read } from '@/link/read.ts'
import { needleName } from '@/mechanism/bed.ts'
import { type Fault, faultId } from '@/mechanism/fault.ts'
import { withFault } from '@/mechanism/fault-list.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { faultKinds, type FaultKindName } from '@/mechanism/fault-kinds.ts'
import { allNeedles, toNeedle } from '@/mechanism/indices.ts'
import { type PartId, sortedByIds } from '@/mechanism/part.ts'
import { wrongParts } from '@/words/case.ts'
import { faultGroups } from '@/words/fault-groups.ts'
import { brokenWords, faultPhrase } from '@/words/faults.ts'
import { keptTitle, stateTitle } from '@/words/machine-comparison.ts'
import { partName, partNames } from '@/words/parts.ts'
import { library } from '../link/library.ts'
import { check } from '../mechanism/check.ts'
import { count } from '../mechanism/make.ts'

const kinds = Object.keys(faultKinds) as FaultKindName[]

/** A kind's faults in each of its places, by number: no more than a link may hold. */
const inEachPlace = (kind: FaultKindName): Fault[] => {
  const { pattern, amount } = faultKinds[kind]
  const filled = (place: RegExp, values: readonly (number | string)[]): string[] =>
    values.map((value) => pattern.replace(place, String(value)))
  const ids = pattern.includes('NEEDLE')
    ? filled(/NEEDLE/, allNeedles.slice(85, 115).map(needleName))
    : pattern.includes('COL')
      ? filled(/COL/, count(1, 24)).map((id) => id.replace('ROW', '1'))
      : /\bC\b/.test(pattern)
        ? filled(/\bC\b/, count(1, 24))
        : /\bJ\b/.test(pattern)
          ? filled(/\bJ\b/, count(1, 8))
          : /\bP\b/.test(pattern)
            ? filled(/\bP\b/, count(2, 25))
            : [pattern]
  return ids.map((id) => faultOf(amount ? `${id}=${amount.usual}` : id))
}

/** Every list of faults that readers see, however the faults came into the machine. */
const lists: readonly [string, (faults: readonly Fault[]) => string[], (fault: Fault) => string][] = [
  ['broken one by one', (faults) => faults.map(faultPhrase), faultPhrase],
  ['as chips', (faults) => faultGroups(faults).map(({ phrase }) => phrase), faultPhrase],
  ['in a title', (faults) => stateTitle('', { faults, wear: 0, seed: 1 }).split('; '), faultPhrase],
  [
    'in a case',
    (faults) => wrongParts(faults).map(({ name, words }) => name + words),
    (fault) =>
      wrongParts([fault])
        .map(({ name, words }) => name + words)
        .join(),
  ],
]

describe('lists sort by number', () => {
  test.each(kinds)('of %s', (kind) => {
    const sorted = inEachPlace(kind)
    check(
      fc.property(fc.shuffledSubarray(sorted, { minLength: sorted.length }), (shuffled) => {
        const broken = shuffled.reduce<Fault[]>(withFault, [])
        const text = shuffled.map((fault) => `break=${faultId(fault)}`).join('&')
        for (const faults of [broken, read(text, library).state.faults]) {
          expect(faults).toEqual(sorted)
          // The same oil on each strip is said once.
          if (kind !== 'strip.slow')
            for (const [, list, name] of lists) expect(list(faults)).toEqual(sorted.map(name))
        }
      }),
      3,
    )
  })

  test('of parts, each named once', () => {
    const parts: PartId[] = [
      ...count(1, 24).map((n) => `pin.${n}` as const),
      'presser',
      ...count(1, 8).map((n) => `strip.${n}` as const),
    ]
    check(
      fc.property(fc.shuffledSubarray([...parts, ...parts], { minLength: 2 * parts.length }), (shuffled) => {
        expect(partNames(shuffled)).toBe(
          parts
            .map(partName)
            .join(', ')
            .replace(/, (?=strip 8$)/, ' and '),
        )
      }),
      5,
    )
  })

  test('by one order, that of numbers and of needles from the left', () => {
    for (const [one, other] of [
      ['pin.2.low', 'pin.10.low'],
      ['needle.L10.bent', 'needle.L9.bent'],
      ['needle.L1.bent', 'needle.R1.bent'],
      ['card.torn.2.11', 'card.torn.10.1'],
      ['belt.slack=2', 'belt.slack=11'],
      ['belt.timing=-3', 'belt.timing=0.5'],
      ['pawl', 'pawl.left'],
      ['card.torn.4.7', 'pin.1.low'],
    ] as const) {
      expect(sortedByIds([one, other], (id) => id)).toEqual([one, other])
      expect(sortedByIds([other, one], (id) => id)).toEqual([one, other])
    }
  })

  test('but a link keeps the order it has always had', () => {
    const pairs = faultsRow.write(['pin.2.low', 'pin.10.low'].map(faultOf), {} as never)
    expect(pairs.map(([, id]) => id)).toEqual(['pin.10.low', 'pin.2.low'])
  })
})

describe('what is broken', () => {
  test('says what it replaces, in the words of links', () => {
    const before = [faultOf('strip.3.seized'), faultOf('pin.5.low')]
    expect(brokenWords(before, faultOf('strip.3.over'), null)).toBe(
      "Strip 3 stuck shifted. Strip 3 seized and strip 3 stuck shifted can't both be so; the later, strip 3 stuck shifted, counts.",
    )
    expect(brokenWords(before, faultOf('strip.4.over'), null)).toBe('Strip 4 stuck shifted.')
    expect(brokenWords(before, faultOf('strip.3.seized'), null)).toBe('Strip 3 seized.')
    expect(brokenWords([], faultOf('belt.slack=24'), '30 is too much')).toMatch(/\. 30 is too much\.$/)
  })
})

describe('a kept state', () => {
  test('is named by all that is in it', () => {
    const { state } = read('pass=7&speed=900&wear=0.4&seed=5&needles=L12-R12&break=strip.3.seized', library)
    expect(keptTitle('Harbour star', state)).toBe(
      'Harbour star; pass 7; 900\u00a0mm/s; needles L12 to R12; Strip 3 seized; wear 40\u00a0%, machine no. 5',
    )
    const one = read('needles=R3-R3', library).state
    expect(keptTitle('No card', one)).toBe('No card; pass 1; 500\u00a0mm/s; needle R3; sound, as new')
    const elsewhere = { ...one, columnOne: toNeedle(112) }
    expect(keptTitle('No card', elsewhere)).toContain('needle R3; column 1 at R13; sound')
  })
})
