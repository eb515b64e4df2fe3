import { describe, expect, test } from 'vitest'
import { allRight } from '@/link/bed-marks.ts'
import { firstPass, type SeenPass, type Session } from '@/link/session.ts'
import { emptySession, readSession, writeSession } from '@/link/session-link.ts'
import { sameCard } from '@/link/card-choice.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { library } from './library.ts'
import { nothingOwn } from '@/mechanism/own.ts'

const usual = firstPass(library)
const fault = (id: string) => faultOf(id)
const session = (text: string): Session => readSession(text, library).session
const said = (text: string): string[] => readSession(text, library).troubles.map(({ sentence }) => sentence)

describe('a session’s link without troubles', () => {
  test.each<[string, Partial<Session>]>([
    ['', {}],
    ['#', {}],
    ['?', {}],
    ['v=1', {}],
    ['practice=0', { practice: 0 }],
    ['deal=0', { deal: 0 }],
    ['deal=4294967295', { deal: 4294967295 }],
    ['deal=5&level=3', { deal: 5, level: 3 }],
    ['practice=4294967295', { practice: 4294967295 }],
    ['marks=rough', { isRough: true }],
    ['pass=1.right.500', { passes: [usual] }],
    ['#pass=4.left.50', { passes: [{ ...usual, row: 4, way: -1, speed: 50 }] }],
    ['pass=2.left.500.p8', { passes: [{ ...usual, row: 2, way: -1, pass: 8 }] }],
    ['pass=2.left.500.p9998', { passes: [{ ...usual, row: 2, way: -1, pass: 9998 }] }],
    ['?pass=2.right.2000', { passes: [{ ...usual, row: 2, speed: 2000 }] }],
    ['card=none&pass=0.right.500', { passes: [{ ...usual, card: { kind: 'none' }, row: null }] }],
    ['card=none&pass=77.right.500', { passes: [{ ...usual, card: { kind: 'none' }, row: null }] }],
    [
      'card=two-rows&pass=2.right.500&pass=1.left.500',
      {
        passes: [
          { ...usual, card: { kind: 'site', id: 'two-rows' }, row: 2 },
          { ...usual, card: { kind: 'site', id: 'two-rows' }, way: -1 },
        ],
      },
    ],
    ['card=x.AAAB&pass=1.right.500', { passes: [{ ...usual, card: { kind: 'own', rows: [1] } }] }],
    ['check=pins', { checked: [{ check: 'pins', found: null }] }],
    ['check=pins.pin.3.low', { checked: [{ check: 'pins', found: fault('pin.3.low') }] }],
    [`check=${'a-'.repeat(10)}`, { checked: [{ check: 'a-'.repeat(10), found: null }] }],
    ['found=pin.3.low', { finding: [fault('pin.3.low')] }],
    [
      'found=strip.3.slow%3D0400&found=pin.3.low',
      { finding: [fault('pin.3.low'), fault('strip.3.slow=400')] },
    ],
    ['found=pin.3.low&found=strip.3.seized', { finding: [fault('pin.3.low'), fault('strip.3.seized')] }],
  ])('%s is read', (text, change) => {
    expect(readSession(text, library)).toEqual({
      session: { ...emptySession(library), ...change },
      troubles: [],
    })
  })
})

describe('what a session’s link has and can’t be read', () => {
  test.each<[string, string]>([
    ['v=2', 'This page doesn’t know “v=2”, so it is left out.'],
    ['colour=1', 'This page doesn’t know “colour=1”, so it is left out.'],
    ['marks=smooth', 'This page doesn’t know “marks=smooth”, so it is left out.'],
    ['card=gone', 'There is no card “gone” here; “main” is used in its place.'],
    ['card=x.', 'There is no card “x.” here; “main” is used in its place.'],
    ['card=XxAAAB', 'There is no card “XxAAAB” here; “main” is used in its place.'],
    ['level=4', 'There is no level “4” of practice, so it is left out.'],
    ['deal=-1', 'The machine “-1” to practise on is not known, so it is left out.'],
    ['practice=-1', 'The machine “-1” to practise on is not known, so it is left out.'],
    ['practice=1.5', 'The machine “1.5” to practise on is not known, so it is left out.'],
    ['practice=4294967296', 'The machine “4294967296” to practise on is not known, so it is left out.'],
    ['practice=', 'The link has a machine to practise on without its number, so it is left out.'],
    ['pass=', 'The link has a pass of which it says nothing, so it is left out.'],
    ['pass=1', 'The pass “1” can’t be read, so it is left out.'],
    ['pass=1.up.500', 'The pass “1.up.500” can’t be read, so it is left out.'],
    ['check=', 'The link has a check without a name, so it is left out.'],
    ['check=Pins', 'The check “Pins” is not known, so it is left out.'],
    ['check=1pins', 'The check “1pins” is not known, so it is left out.'],
    ['check=pins1', 'The check “pins1” is not known, so it is left out.'],
    [`check=${'a'.repeat(21)}`, `The check “${'a'.repeat(21)}” is not known, so it is left out.`],
    [
      'check=pins.pin.25.low',
      'The fault “pin.25.low” can’t be read: there is no column 25; they run from 1 to 24.',
    ],
    ['found=nothing', 'The fault “nothing” can’t be read: no such fault is known.'],
  ])('%s is left out and said', (text, sentence) => {
    expect(readSession(text, library)).toMatchObject({
      session: emptySession(library),
      troubles: [{ kind: 'left out', sentence: sentence.replaceAll('’', "'") }],
    })
  })

  test.each<[string, string]>([
    ['pass=5.right.500', 'For pass 1 the link has row “5”; this card has rows 1 to 4, and row 1 is used.'],
    ['pass=0.right.500', 'For pass 1 the link has row “0”; this card has rows 1 to 4, and row 1 is used.'],
    ['pass=.right.500', 'For pass 1 the link has no row; this card has rows 1 to 4, and row 1 is used.'],
    [
      'pass=1.right.49',
      'For pass 1 the link has the speed “49”, which is no number from 50 to 2000; 500 is used.',
    ],
    [
      'pass=1.right.2001',
      'For pass 1 the link has the speed “2001”, which is no number from 50 to 2000; 500 is used.',
    ],
    ['pass=1.right', 'For pass 1 the link has no speed; 500 is used.'],
    ...(['2', '0', '10001', 'one', ''] as const).map((number): [string, string] => [
      `pass=1.right.500.p${number}`,
      `For pass 1 the link has the number “${number}”, which is no pass to the right: those are 1, 3, 5 and so on; it is taken from the row and the way.`,
    ]),
  ])('%s is replaced and said', (text, sentence) => {
    expect(readSession(text, library)).toMatchObject({
      session: emptySession(library),
      troubles: [{ kind: 'changed', sentence }],
    })
  })

  test('in a later pass is said with that pass’s number', () => {
    expect(said('pass=1.right.500&pass=9.left.9.wR3_what')).toEqual([
      "In pass 2 the needles “what” can't be read and are left out.",
      'For pass 2 the link has row “9”; this card has rows 1 to 4, and row 1 is used.',
      'For pass 2 the link has the speed “9”, which is no number from 50 to 2000; 500 is used.',
    ])
  })

  test('among the needles is named, shortly where it is much', () => {
    expect(said('pass=1.right.500.qR3.wR300')).toEqual([
      "In pass 1 the needles “qR3”, “R300” can't be read and are left out.",
    ])
    const much = said(`pass=1.right.500.${'qR3.'.repeat(99)}`)
    expect(much).toHaveLength(1)
    expect(much[0]).toMatch(/^In pass 1 the needles “qR3”, .*… can't be read and are left out\.$/)
    expect(much[0]!.length).toBeLessThan(200)
  })

  test('of a card leaves the card before', () => {
    const text = 'card=two-rows&card=gone&pass=2.right.500'
    expect(session(text).passes[0]!.card).toEqual({ kind: 'site', id: 'two-rows' })
    expect(said(text)).toEqual(['There is no card “gone” here; “two-rows” is used in its place.'])
    expect(said('card=none&card=gone')).toEqual([
      'There is no card “gone” here; “none” is used in its place.',
    ])
    expect(said('card=x.AAAB&card=gone')).toEqual([
      'There is no card “gone” here; “x.AAAB” is used in its place.',
    ])
  })

  test('of a card cut short leaves its whole rows', () => {
    const text = 'card=x.AAABAA&pass=1.right.500'
    expect(session(text).passes[0]!.card).toEqual({ kind: 'own', rows: [1] })
    expect(readSession(text, library).troubles).toMatchObject([
      {
        kind: 'left out',
        sentence: "The link's own card was cut: row 2 is not 24 columns wide, so the 1 before it stand.",
      },
    ])
  })

  test('is what comes after forty passes, twenty checks or two faults of a finding', () => {
    const passes = session('pass=1.right.500&'.repeat(40))
    expect(passes.passes).toHaveLength(40)
    expect(said('pass=1.right.500&'.repeat(40))).toEqual([])
    expect(session('pass=1.right.500&'.repeat(42)).passes).toHaveLength(40)
    for (const count of [41, 300])
      expect(said('pass=1.right.500&'.repeat(count))).toEqual([
        `The link has ${count} passes, more than 40; the first 40 are read.`,
      ])
    expect(said('check=pins&'.repeat(20))).toEqual([])
    expect(session('check=pins&'.repeat(21)).checked).toHaveLength(20)
    expect(said('check=pins&'.repeat(21))).toEqual(['The link has more than 20 checks; “pins” is left out.'])
    expect(said('found=pin.1.low&found=pin.2.low&found=pin.3.low')).toEqual([
      'The finding has more than two faults; “pin.3.low” is left out.',
    ])
  })
})

describe('what an owner answered', () => {
  test('is read one answer a question, and the later one counts', () => {
    expect(session('asked=stood.yes&asked=came.slowly').intake).toEqual(['stood.yes', 'came.slowly'])
    expect(session('asked=stood.yes&asked=stood.no').intake).toEqual(['stood.no'])
    expect(said('asked=stood.yes&asked=stood.no')).toEqual([
      'A question has two answers; “stood.no” counts, as the later one.',
    ])
    expect(said('asked=stood.yes&asked=stood.yes')).toEqual([])
  })

  test('is left out and said where it is not known', () => {
    expect(session('asked=toString&asked=opened.yes').intake).toEqual(['opened.yes'])
    expect(said('asked=toString')).toEqual(['The answer “toString” is not known, so it is left out.'])
  })
})

describe('a session written', () => {
  const passes: SeenPass[] = [
    { ...usual, card: { kind: 'none' }, row: null, way: -1, speed: 100 },
    { ...usual, card: { kind: 'none' }, row: null },
    { ...usual, row: 3, marks: allRight.map((mark, n) => (n === 102 ? 'w' : mark)) },
    { ...usual, card: { kind: 'own', rows: [1] } },
  ]

  test('names each card once before its passes, and its checks and finding last', () => {
    const whole: Session = {
      practice: 7,
      deal: 12,
      level: 2,
      isRough: true,
      columnOne: toNeedle(112),
      own: nothingOwn,
      passes,
      checked: [
        { check: 'pins', found: null },
        { check: 'strips', found: fault('strip.3.seized') },
      ],
      intake: ['settings.confirmed', 'stood.no'],
      finding: [fault('strip.3.seized'), fault('pin.3.low')],
    }
    expect(writeSession(whole, library)).toBe(
      'practice=7&deal=12&level=2&marks=rough&first=R13&card=none&pass=0.left.100&pass=0.right.500&card=main&pass=3.right.500.wR3' +
        '&card=x.AAAB&pass=1.right.500&check=pins&check=strips.strip.3.seized&asked=stood.no&asked=settings.confirmed' +
        '&found=pin.3.low&found=strip.3.seized',
    )
  })

  test('leaves out what is as usual', () => {
    expect(writeSession(emptySession(library), library)).toBe('pass=1.right.500')
  })
})

describe('two choices of a card', () => {
  test.each([
    [{ kind: 'none' }, { kind: 'none' }, true],
    [{ kind: 'site', id: 'main' }, { kind: 'site', id: 'main' }, true],
    [{ kind: 'own', rows: [1, 2] }, { kind: 'own', rows: [1, 2] }, true],
    [{ kind: 'site', id: 'main' }, { kind: 'site', id: 'two-rows' }, false],
    [{ kind: 'own', rows: [1, 2] }, { kind: 'own', rows: [2, 1] }, false],
    [{ kind: 'none' }, { kind: 'site', id: 'main' }, false],
  ] as const)('%j and %j: the same, %s', (one, other, same) => {
    expect(sameCard(one, other)).toBe(same)
    expect(sameCard(other, one)).toBe(same)
  })
})

describe('a name that a session’s link may have', () => {
  test('is known by itself, not by its value', () => {
    expect(session('hands=rough').isRough).toBe(false)
    expect(said('hands=rough')).toEqual(["This page doesn't know “hands=rough”, so it is left out."])
  })

  test('is read after a # or ? at the beginning only', () => {
    expect(session('practice=5#').practice).toBeNull()
    expect(said('practice=5#')).toEqual(['The machine “5#” to practise on is not known, so it is left out.'])
  })
})
