import { describe, expect, test } from 'vitest'
import { documentOf, faultsOf, findingEntries } from '@/commands/finding-document.ts'
import type { Finding } from '@/find/finding.ts'
import type { NotedPass } from '@/find/query.ts'
import { needleIndex } from '@/mechanism/bed.ts'

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

const look = { card: [1], speed: 500, needles: 's'.repeat(200) }
const passes: NotedPass[] = [
  { ...look, row: 1, way: 1 },
  { ...look, card: null, row: null, way: -1 },
]

describe('a finding as written', () => {
  test('has each place with its ways, what looks alike in one', () => {
    expect(findingEntries(finding, { passes }).places).toEqual([
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
    const { oil, wear, together, unexplained } = findingEntries(finding, { passes })
    expect({ oil, wear, together }).toEqual({
      oil: finding.oil,
      wear: finding.wear,
      together: finding.together,
    })
    expect(unexplained).toEqual([{ row: null, way: 'left', needle: 'R12', chance: 0.8 }])
    const [first] = findingEntries(
      { ...finding, unexplained: [{ ...finding.unexplained[0]!, pass: 0 }] },
      { passes },
    ).unexplained
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

test('a document is JSON with a line for each entry of a list', () => {
  const entries = { ranked: [{ a: 1 }, { a: 2 }], next: [], oil: { fresh: 1 } }
  const text = documentOf(entries)
  expect(JSON.parse(text)).toEqual(entries)
  expect(text.split('\n')).toEqual([
    '{ "ranked": [',
    '    {"a":1},',
    '    {"a":2}',
    '  ],',
    '  "next": [],',
    '  "oil": {"fresh":1} }',
    '',
  ])
})
