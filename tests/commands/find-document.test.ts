import { describe, expect, test } from 'vitest'
import { faultsOf, findDocument, findEntries } from '@/commands/find-document.ts'
import type { Finding } from '@/find/finding.ts'
import type { NextLook } from '@/find/next.ts'
import type { NotedPass, Query } from '@/find/query.ts'
import { needleIndex, usualPlace } from '@/mechanism/bed.ts'
import { checkWords } from '@/words/checks.ts'

const finding: Finding = {
  places: [
    {
      place: 'strip.3',
      wrong: 0.98,
      before: 0.2,
      ways: [
        { causes: ['strip.3.seized'], probability: 0.9 },
        { causes: ['strip.3.slow'], probability: 0.08 },
      ],
    },
    {
      place: 'needle.R3',
      wrong: 0.4,
      before: 0.011,
      ways: [
        { causes: ['catch.R3.broken', 'needle.R3.bent'], probability: 0.39 },
        { causes: ['other'], probability: 0.01 },
      ],
    },
    { place: 'card', wrong: 0.02, before: null, ways: [{ causes: ['card.out'], probability: 0.02 }] },
  ],
  oil: { fresh: 0.02, old: 0.21, set: 0.77 },
  wear: { mean: 0.12, low: 0, high: 0.3 },
  together: [{ places: ['carriage', 'belt'], wrong: 0.99 }],
  unexplained: [{ pass: 1, needle: needleIndex('R12')!, chance: 0.8 }],
  ranked: [],
  isExact: true,
}

const next: NextLook[] = [
  { check: 'strips', bits: 0.123456, minutes: 2, opened: 'nothing', cautions: [], pass: null, outcomes: [] },
]

const look = { card: [1], speed: 500, needles: 's'.repeat(200) }
const passes: NotedPass[] = [
  { ...look, row: 1, way: 1 },
  { ...look, card: null, row: null, way: -1 },
]

const query: Query = { ...usualPlace, card: [1], passes, slip: 0.005, checks: [] }
const entriesOf = (more: Partial<Finding> = {}) => findEntries(query, { ...finding, ...more }, next)

describe('a finding as written', () => {
  test('has each place with its ways, what looks alike in one', () => {
    expect(entriesOf().places).toEqual([
      {
        place: 'strip.3',
        wrong: 0.98,
        before: 0.2,
        ways: [
          { fault: 'strip.3.seized', probability: 0.9 },
          { fault: 'strip.3.slow', probability: 0.08 },
        ],
      },
      {
        place: 'needle.R3',
        wrong: 0.4,
        before: 0.011,
        ways: [
          { fault: 'catch.R3.broken | needle.R3.bent', probability: 0.39 },
          { fault: 'other', probability: 0.01 },
        ],
      },
      { place: 'card', wrong: 0.02, before: null, ways: [{ fault: 'card.out', probability: 0.02 }] },
    ])
  })

  test('has the oil, the wear and sets, and each unexplained note by the row, way and needle of its look', () => {
    const { oil, wear, together, unexplained } = entriesOf()
    expect({ oil, wear, together }).toEqual({
      oil: finding.oil,
      wear: finding.wear,
      together: finding.together,
    })
    expect(unexplained).toEqual([{ row: null, way: 'left', needle: 'R12', chance: 0.8 }])
    const [first] = entriesOf({ unexplained: [{ ...finding.unexplained[0]!, pass: 0 }] }).unexplained
    expect(first).toMatchObject({ row: 1, way: 'right' })
  })
})

describe('a whole machine as written', () => {
  const faults = (ways: Finding['ranked'][number]['faults']) => faultsOf({ faults: ways, probability: 0.1 })

  test('is nothing where it is sound, and other where it is all the rest', () => {
    expect(faults([])).toEqual([])
    expect(faults(null)).toEqual(['other'])
  })

  test('is its ids in order with a plus, once for each choice of what looks alike', () => {
    expect(faults([['strip.3.seized'], ['pin.5.low', 'rocker.5.dead']])).toEqual([
      'pin.5.low + strip.3.seized',
      'rocker.5.dead + strip.3.seized',
    ])
    expect(
      faults([['card.out'], ['pin.5.low', 'rocker.5.dead'], ['catch.R3.broken', 'needle.R3.bent']]),
    ).toEqual([
      'card.out + catch.R3.broken + pin.5.low',
      'card.out + needle.R3.bent + pin.5.low',
      'card.out + catch.R3.broken + rocker.5.dead',
      'card.out + needle.R3.bent + rocker.5.dead',
    ])
  })

  test('is one text with a bar between what looks alike where the choices are too many', () => {
    const ways = (count: number) =>
      Array.from({ length: count }, (_, n) => [`pin.${n + 1}.low`, `rocker.${n + 1}.dead`] as const)
    expect(faults(ways(6))).toHaveLength(64)
    expect(faults(ways(7))).toEqual([
      Array.from({ length: 7 }, (_, n) => `pin.${n + 1}.low | rocker.${n + 1}.dead`).join(' + '),
    ])
  })
})

describe('the document', () => {
  const ranked = [
    { faults: [['strip.3.seized' as const]], probability: 0.9 },
    { faults: null, probability: 0.1 },
  ]
  const text = findDocument(query, { ...finding, ranked }, next)

  test('is JSON with its keys in order, and a line for each entry of a list', () => {
    const document = JSON.parse(text) as Record<string, unknown>
    expect(Object.keys(document)).toEqual([
      'ranked',
      'next',
      'places',
      'oil',
      'wear',
      'together',
      'unexplained',
    ])
    expect(document).toEqual(entriesOf({ ranked }))
    expect(text.split('\n').filter((line) => line.startsWith('    {'))).toHaveLength(2 + 1 + 3 + 1 + 1)
    expect(text.endsWith(' }\n')).toBe(true)
  })

  test('says why a machine is as likely as it is, and of the rest that it is the rest', () => {
    expect(entriesOf({ ranked }).ranked).toEqual([
      {
        faults: ['strip.3.seized'],
        probability: 0.9,
        why: expect.stringMatching(/^It does not explain/) as string,
      },
      { faults: ['other'], probability: 0.1, why: 'All machines that are not listed, together.' },
    ])
  })

  test('has a next look with its sentence, and its bits to four places', () => {
    expect(entriesOf().next).toEqual([{ check: checkWords.strips, bits: 0.1235, minutes: 2, opens: false }])
  })
})
