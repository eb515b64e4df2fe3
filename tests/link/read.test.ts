import { toBed } from '@/mechanism/bed.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { describe, expect, test } from 'vitest'
import { defaultState, read } from '@/link/read.ts'
import type { State } from '@/link/state.ts'
import { library } from './library.ts'

const usual = defaultState(library)
const seized = (strip: number) => faultOf(`strip.${strip}.seized`)

describe('an empty link', () => {
  test.each(['', '#', '?', '&', '&&'])('%j is the usual state', (text) => {
    expect(read(text, library)).toEqual({ state: usual, troubles: [] })
  })

  test('means the main card, pass 1 from the left turn mark, 500 mm/s, the whole bed and nothing wrong', () => {
    expect(usual).toEqual({
      card: { kind: 'site', id: 'main' },
      pass: 1,
      at: -12,
      faults: [],
      speed: 500,
      wear: 0,
      seed: 1,
      bed: toBed({ first: 0, last: 199 }),
      columnOne: 100,
      own: {},
      note: '',
    })
  })
})

describe('each key', () => {
  test.each<[string, Partial<State>]>([
    ['v=1', {}],
    ['card=two-rows', { card: { kind: 'site', id: 'two-rows' } }],
    ['card=main', {}],
    ['card=none', { card: { kind: 'none' } }],
    ['card=x.AAAB', { card: { kind: 'own', rows: [1] } }],
    ['pass=1', {}],
    ['pass=2', { pass: 2, at: 211 }],
    ['pass=9999', { pass: 9999 }],
    ['pass=%2B3', { pass: 3 }],
    ['at=R12.5', { at: 111.5 }],
    ['break=strip.3.seized', { faults: [seized(3)] }],
    ['break=strip.3.seized&break=strip.1.seized', { faults: [seized(1), seized(3)] }],
    ['break=strip.3.seized&break=strip.3.seized', { faults: [seized(3)] }],
    ['speed=50', { speed: 50 }],
    ['speed=2000', { speed: 2000 }],
    ['speed=333.25', { speed: 333.25 }],
    ['wear=1', { wear: 1 }],
    ['wear=.5', { wear: 0.5 }],
    ['seed=0', { seed: 0 }],
    ['seed=4294967295', { seed: 4294967295 }],
    ['first=R13', { columnOne: toNeedle(112) }],
    ['first=L12', { columnOne: toNeedle(112) }],
    ['needles=L2-R2', { bed: toBed({ first: 98, last: 101 }), at: 86 }],
    ['own=1_bed-62', { own: { needles: 62 }, bed: toBed({ first: 69, last: 130 }), at: 57 }],
    ['own=1_bed-200', {}],
    ['note=a+b%20c', { note: 'a b c' }],
    ['note=%3Cscript%3E', { note: '<script>' }],
    ['pass=3&pass=3', { pass: 3 }],
    ['#pass=3', { pass: 3 }],
    ['?pass=3', { pass: 3 }],
    ['https://example.org/#pass=3', { pass: 3 }],
    ['http://127.0.0.1:4321/workbench/?beside=fabric#pass=3\n', { pass: 3 }],
    ['file:///media/stick/site/workbench/index.html#pass=3', { pass: 3 }],
    ['example.org/workbench/#pass=3', { pass: 3 }],
    ['/workbench/#pass=3', { pass: 3 }],
    ['note=https://example.org/#pass=3', { note: 'https://example.org/#pass=3' }],
  ])('%s is read with nothing to say', (text, change) => {
    expect(read(text, library)).toEqual({ state: { ...usual, ...change }, troubles: [] })
  })

  test('of a note may be 280 characters long, however many bytes they take', () => {
    const note = '🧶'.repeat(280)
    expect(read(`note=${note}`, library)).toEqual({ state: { ...usual, note }, troubles: [] })
  })
})

describe('what can’t be read', () => {
  test.each<[string, string]>([
    ['v=2', 'The link is of version “2”, which is not known here; it was read as version 1.'],
    ['colour=red', 'This site doesn’t know “colour”, so it is left out.'],
    ['Pass=3', 'This site doesn’t know “Pass”, so it is left out.'],
    ['=3', 'The link has a value without a name, which is left out.'],
    ['__proto__=3', 'This site doesn’t know “__proto__”, so it is left out.'],
    ['pass=two', 'For “pass” the link has “two”, which is no whole number; 1 is used.'],
    ['pass=', 'For “pass” the link has nothing, where a whole number belongs; 1 is used.'],
    ['pass=٣', 'For “pass” the link has “٣”, which is no whole number; 1 is used.'],
    ['speed=', 'For “speed” the link has nothing, where a number belongs; 500 is used.'],
    ['v=', 'The link does not say of which version it is; it was read as version 1.'],
    ['needles=', 'The link names no needles in use; L100 to R100 are used.'],
    ['first=', 'The link does not name the needle of column 1; R1 is used.'],
    ['at=', 'The link has no place for the carriage after “at”; it stands at the start of the pass.'],
    ['pass=2.5', 'For “pass” the link has “2.5”, which is no whole number; 1 is used.'],
    ['pass=1e3', 'For “pass” the link has “1e3”, which is no whole number; 1 is used.'],
    ['pass=+3', 'For “pass” the link has “ 3”, which is no whole number; 1 is used.'],
    ['seed=0.5', 'For “seed” the link has “0.5”, which is no whole number; 1 is used.'],
    ['speed=fast', 'For “speed” the link has “fast”, which is no number; 500 is used.'],
    ['speed=Infinity', 'For “speed” the link has “Infinity”, which is no number; 500 is used.'],
    ['wear=50%25', 'For “wear” the link has “50%”, which is no number; 0 is used.'],
    ['wear=0,5', 'For “wear” the link has “0,5”, which is no number; 0 is used.'],
    ['needles=R9-L9', '“R9-L9” names no needles from left to right such as L24-R24; L100 to R100 are used.'],
    ['needles=L101-R3', '“L101-R3” goes beyond the needles of this bed; L100 to R100 are used.'],
    ['own=1_bed-', 'For the number of needles the link has “”, which is no even whole number; 200 is used.'],
    [
      'own=1_bed-161',
      'For the number of needles the link has “161”, which is no even whole number; 200 is used.',
    ],
    [
      'own=1_bed-99.5',
      'For the number of needles the link has “99.5”, which is no even whole number; 200 is used.',
    ],
    [
      'own=1_bed-many',
      'For the number of needles the link has “many”, which is no even whole number; 200 is used.',
    ],
    ['first=R101', '“R101” is no needle for column 1 such as R1 or L12; R1 is used.'],
    ['first=7', '“7” is no needle for column 1 such as R1 or L12; R1 is used.'],
    ['needles=all', '“all” names no needles from left to right such as L24-R24; L100 to R100 are used.'],
    ['at=middle', '“middle” is no place for the carriage; it stands at the start of the pass.'],
    ['at=R0', '“R0” is no place for the carriage; it stands at the start of the pass.'],
    ['card=gone', 'There is no card “gone” here; the main card is used.'],
    ['card=', 'The link names a card without its name; the main card is used.'],
    ['card=constructor', 'There is no card “constructor” here; the main card is used.'],
    [
      'card=x.',
      'The link’s own card can’t be read: it has no whole row of 24 columns. The main card is used.',
    ],
    ['card=x.AA*A', 'The link’s own card can’t be read: “*” has no place in a card. The main card is used.'],
    ['break=', 'The link has a fault without a name, which is left out.'],
    ['break==0.5', 'The fault “=0.5” can’t be read: its name is missing.'],
    [
      'break=pin.3.5.low',
      'The fault “pin.3.5.low” can’t be read: there is no column 3.5; they run from 1 to 24.',
    ],
    ['break=pin..low', 'The fault “pin..low” can’t be read: no column is named; they run from 1 to 24.'],
    [
      'https://example.org/workbench/',
      'The address “https://example.org/workbench/” has nothing after a “#”, so it says nothing about a machine.',
    ],
    ['break=strip.3.bent', 'The fault “strip.3.bent” can’t be read: no such fault is known.'],
    ['break=toString', 'The fault “toString” can’t be read: no such fault is known.'],
    [
      'break=strip.9.over',
      'The fault “strip.9.over” can’t be read: there is no strip 9; they run from 1 to 8.',
    ],
    ['break=pin.0.low', 'The fault “pin.0.low” can’t be read: there is no column 0; they run from 1 to 24.'],
    [
      'break=needle.L101.bent',
      'The fault “needle.L101.bent” can’t be read: there is no needle L101; they run from L100 to R100.',
    ],
    ['break=pawl.left%3D1', 'The fault “pawl.left=1” can’t be read: this fault takes no number.'],
    ['break=sweep.worn', 'The fault “sweep.worn” can’t be read: it needs a number, such as sweep.worn=0.8.'],
    [
      'break=sweep.worn=x',
      'The fault “sweep.worn=x” can’t be read: “x” is not a number; it runs from 0 to 3 mm.',
    ],
    ['break=card.torn.5.1', 'The fault “card.torn.5.1” is left out: this card has no row 5, only 4.'],
    [
      'card=none&note=%E2%80%AE&break=%0A%E2%80%A8%E2%80%AE',
      'The fault “···” can’t be read: no such fault is known.',
    ],
    [
      `break=${'long'.repeat(30)}`,
      `The fault “${'long'.repeat(10)}…” can’t be read: no such fault is known.`,
    ],
  ])('%s is left out and said', (text, sentence) => {
    const { state, troubles } = read(text, library)
    expect(troubles).toMatchObject([{ kind: 'left out', sentence: sentence.replaceAll('’', "'") }])
    const { card, note } = state
    expect({ ...state, card: usual.card, note: '' }).toEqual(usual)
    expect([card.kind, note]).toEqual(text.startsWith('card=none') ? ['none', '\u202e'] : ['site', ''])
  })

  test('is what is over where a card in a link is cut short or too long', () => {
    const short = read('card=x.AAABAA', library)
    expect(short.state.card).toEqual({ kind: 'own', rows: [1] })
    const sentence = "The link's own card was cut: row 2 is not 24 columns wide, so the 1 before it stand."
    expect(short.troubles).toMatchObject([{ kind: 'left out', sentence }])
    const long = read(`card=x.${'AAAB'.repeat(201)}`, library)
    expect(long.state.card).toEqual({ kind: 'own', rows: new Array(200).fill(1) })
    expect(long.troubles.map(({ kind }) => kind)).toEqual(['left out'])
  })

  test('leaves the rest of the link alone', () => {
    const { state } = read('pass=4&speed=fast&break=strip.9.over&break=strip.3.seized&wear=0.5', library)
    expect(state).toEqual({ ...usual, pass: 4, at: 211, faults: [seized(3)], wear: 0.5 })
  })

  test('is said once with a count where it is of one kind', () => {
    const sentences = (text: string) => read(text, library).troubles.map(({ sentence }) => sentence)
    expect(sentences('a=1&b=2&c=3&a=4')).toEqual([
      "This site doesn't know “a”, so it is left out. And 2 more of this kind.",
    ])
    expect(sentences('break=strip.9.over&break=x&wear=x&speed=x')).toEqual([
      "The fault “strip.9.over” can't be read: there is no strip 9; they run from 1 to 8. And 1 more of this kind.",
      'For “speed” the link has “x”, which is no number; 500 is used.',
      'For “wear” the link has “x”, which is no number; 0 is used.',
    ])
  })

  test('includes every fault after the first hundred', () => {
    const ids = Array.from({ length: 103 }, (_, n) => `break=turn.short.${n + 2}`)
    const { state, troubles } = read(ids.join('&'), library)
    expect(state.faults.map(({ at }) => at[0]).sort((one = 0, other = 0) => one - other)).toEqual(
      Array.from({ length: 100 }, (_, n) => n + 2),
    )
    const sentence = 'The link names 103 faults, more than 100; the first 100 are read.'
    expect(troubles).toMatchObject([{ kind: 'left out', sentence }])
    expect(read(ids.slice(0, 100).join('&'), library).troubles).toEqual([])
  })
})

describe('what is out of range', () => {
  test.each<[string, string, Partial<State>]>([
    ['pass=0', 'For “pass” the link has 0, outside 1 to 9999; 1 is used.', {}],
    ['pass=-2', 'For “pass” the link has -2, outside 1 to 9999; 1 is used.', {}],
    ['pass=10000', 'For “pass” the link has 10000, outside 1 to 9999; 9999 is used.', { pass: 9999 }],
    ['speed=10', 'For “speed” the link has 10, outside 50 to 2000; 50 is used.', { speed: 50 }],
    ['speed=2000.5', 'For “speed” the link has 2000.5, outside 50 to 2000; 2000 is used.', { speed: 2000 }],
    ['wear=-0.1', 'For “wear” the link has -0.1, outside 0 to 1; 0 is used.', {}],
    ['wear=1.5', 'For “wear” the link has 1.5, outside 0 to 1; 1 is used.', { wear: 1 }],
    ['seed=-1', 'For “seed” the link has -1, outside 0 to 4294967295; 0 is used.', { seed: 0 }],
    [
      'seed=4294967296',
      'For “seed” the link has 4294967296, outside 0 to 4294967295; 4294967295 is used.',
      { seed: 4294967295 },
    ],
    ['at=R113', 'The carriage can’t be at “R113” with these needles in use; it stands at R112.', { at: 211 }],
    [
      'at=R5000',
      'The carriage can’t be at “R5000” with these needles in use; it stands at R112.',
      { at: 211 },
    ],
    ['at=L112.5', 'The carriage can’t be at “L112.5” with these needles in use; it stands at L112.', {}],
    [
      'needles=L5-R5&at=R30',
      'The carriage can’t be at “R30” with these needles in use; it stands at R17.',
      { bed: toBed({ first: 95, last: 104 }), at: 116 },
    ],
    [
      'break=sweep.worn=9',
      'In the fault “sweep.worn=9”, 9 is outside 0 to 3 mm, so 3 is used.',
      { faults: [faultOf('sweep.worn=3')] },
    ],
    [
      'break=strip.2.slow=0',
      'In the fault “strip.2.slow=0”, 0 is outside 1 to 5000 ms, so 1 is used.',
      { faults: [faultOf('strip.2.slow=1')] },
    ],
  ])('%s is clamped and said', (text, sentence, change) => {
    expect(read(text, library)).toMatchObject({
      state: { ...usual, ...change },
      troubles: [{ kind: 'changed', sentence: sentence.replaceAll('’', "'") }],
    })
  })

  test('in a note is what comes after 280 characters, counted as a reader counts them', () => {
    const { state, troubles } = read(`note=${'🧶'.repeat(281)}`, library)
    expect(state.note).toBe('🧶'.repeat(280))
    const sentence = 'The note is longer than 280 characters and is cut there.'
    expect(troubles).toMatchObject([{ kind: 'changed', sentence }])
  })
})

describe('what contradicts itself', () => {
  test.each<[string, string, string[]]>([
    ['strip.3.seized', 'strip.3.over', ['strip.over']],
    ['strip.3.over', 'strip.3.seized', ['strip.seized']],
    ['pin.4.low', 'pin.4.high', ['pin.high']],
    ['sweep.worn=0.4', 'sweep.worn=0.5', ['sweep.worn']],
    ['strip.3.slow', 'strip.3.slow=20', ['strip.slow']],
    ['card.torn.2.3', 'card.blocked.2.3', ['card.blocked']],
    ['gate.1.low=0.5', 'gate.1.high=0.5', ['gate.1.high']],
  ])('%s and %s leave the later', (one, other, kinds) => {
    const { state, troubles } = read(`break=${one}&break=${other}`, library)
    expect(state.faults.map(({ kind }) => kind)).toEqual(kinds)
    const sentence = `“${one}” and “${other}” can't both be so; the later, “${other}”, counts.`
    expect(troubles).toMatchObject([{ kind: 'changed', sentence }])
  })

  test.each([
    'strip.3.seized&break=strip.4.over',
    'pin.4.low&break=pin.4.over',
    'card.torn.2.3&break=card.blocked.3.2',
    'catch.R3.broken&break=needle.R3.bent',
  ])('is not %s', (text) => {
    const { state, troubles } = read(`break=${text}`, library)
    expect(state.faults).toHaveLength(2)
    expect(troubles).toEqual([])
  })

  test('may be two earlier faults at once', () => {
    const ids = ['needle.R3.bent', 'needle.R3.stiff', 'needle.R3.gone']
    const { state, troubles } = read(ids.map((id) => `break=${id}`).join('&'), library)
    expect(state.faults).toEqual([faultOf('needle.R3.gone')])
    expect(troubles.map(({ sentence }) => sentence)).toEqual([
      "“needle.R3.bent” and “needle.R3.gone” can't both be so; the later, “needle.R3.gone”, counts. And 1 more of this kind.",
    ])
  })

  test.each([
    ['pass=2&pass=3', 'pass', '3'],
    ['pass=3&pass=2&pass=3', 'pass', '3'],
    ['card=none&card=main', 'card', 'main'],
    ['note=Hello&note=', 'note', ''],
  ])('%s leaves the last and is said once', (text, key, last) => {
    const { state, troubles } = read(text, library)
    expect(state).toEqual(read(`${key}=${last}`, library).state)
    const sentence = `The link gives “${key}” more than once; the last, “${last}”, counts.`
    expect(troubles).toMatchObject([{ kind: 'changed', sentence }])
  })
})
