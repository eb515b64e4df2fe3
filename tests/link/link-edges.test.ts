import { describe, expect, test } from 'vitest'
import { caseTitle, readCase, titleCharacters, writeCase } from '@/link/case.ts'
import { readCarriagePosition, readBed, writeCarriagePosition, writeBed } from '@/link/carriage-position.ts'
import { defaultState, read } from '@/link/read.ts'
import { rowsOf } from '@/link/state.ts'
import { write } from '@/link/write.ts'
import { library } from './library.ts'
import { toBed } from '@/mechanism/bed.ts'
import { toNeedle } from '@/mechanism/indices.ts'

const usual = defaultState(library)
const unmended = { done: '', after: null, left: [] } as const
const titleOf = (text: string): string => readCase(text, library).title
const noteOf = (text: string): string => readCase(text, library).state.note

describe('a case’s link that was cut', () => {
  test.each([
    ['note=caf%C3%A9', 'café'],
    ['note=caf%C3%A', 'caf'],
    ['note=caf%C3%', 'caf'],
    ['note=caf%C3', 'caf'],
    ['note=caf%', 'caf'],
    ['note=caf', 'caf'],
    ['note=%F0%9F%A7%B6', '🧶'],
    ['note=a%F0%9F%A7%B', 'a'],
    ['note=a%F0%9F%A7', 'a'],
    ['note=a%F0%9F', 'a'],
    ['note=a%F0', 'a'],
    ['note=%C3%A9x%C3', 'éx'],
    ['note=%C3%A9%C3', 'é'],
    ['note=%D0%9F%D1%80%D0%B8%D0', 'При'],
    ['note=a%20', 'a '],
    ['note=a%2', 'a'],
    ['note=', ''],
    ['note', ''],
    ['no', ''],
  ])('%s has the note “%s”', (text, note) => {
    expect(noteOf(text)).toBe(note)
    expect(readCase(text, library)).toMatchObject({ isCut: true, troubles: [] })
    expect(noteOf(`pass=1&${text}`)).toBe(note)
  })

  test('in its title gives what there is of it', () => {
    expect(titleOf('title=Six%20str')).toBe('Six str')
    expect(titleOf('title=caf%C3')).toBe('caf')
    expect(titleOf('titl')).toBe('')
  })

  test('is one without its last pair, wherever else that is', () => {
    const isCut = (text: string): boolean => readCase(text, library).isCut
    expect(['', '#', '?', '&', 'end=1', '#end=1', 'title=a&end=1', 'title=a&end=1&'].map(isCut)).toEqual(
      new Array(8).fill(false),
    )
    expect(['end=', 'end=1&title=a', 'end=11', 'title=a', 'end=1&end=2'].map(isCut)).toEqual(
      new Array(5).fill(true),
    )
  })

  test('keeps the pairs before the last whole', () => {
    const { title, state } = readCase('title=Mine&pass=4&break=strip.3.seized&spee', library)
    expect([title, state.pass, state.faults.length, state.speed]).toEqual(['Mine', 4, 1, 500])
  })
})

describe('a case’s title', () => {
  test('is counted without blanks at its beginning, and may have a # in it', () => {
    expect(caseTitle(`  ${'x'.repeat(titleCharacters)}y`)).toBe('x'.repeat(titleCharacters))
    expect(titleOf('title=No.#3&end=1')).toBe('No.#3')
  })

  test.each([
    ['', ''],
    ['  ', ''],
    [' a  b ', 'a  b'],
    ['a\tb', 'a·b'],
    ['x'.repeat(80), 'x'.repeat(80)],
    ['x'.repeat(81), 'x'.repeat(80)],
    [`${'x'.repeat(79)} y`, 'x'.repeat(79)],
    ['🧶'.repeat(81), '🧶'.repeat(80)],
  ])('%j is shown as %j', (text, title) => {
    expect(caseTitle(text)).toBe(title)
    expect(titleOf(`${new URLSearchParams({ title: text }).toString()}&end=1`)).toBe(title)
  })

  test('is said to be cut where it is, and given more than once where they differ', () => {
    const said = (text: string): string[] => readCase(text, library).troubles.map(({ sentence }) => sentence)
    expect(said(`title=${'x'.repeat(titleCharacters + 1)}&end=1`)).toEqual([
      'The title is longer than 80 characters and is cut there.',
    ])
    expect(said(`title=${'x'.repeat(titleCharacters)}+&end=1`)).toEqual([])
    expect(said('title=a&title=b&end=1')).toEqual([
      'The link gives “title” more than once; the last, “b”, counts.',
    ])
    expect(said('title=a&title=a&end=1')).toEqual([])
    expect(said('title=a&pass=0&end=1')).toEqual(['For “pass” the link has 0, outside 1 to 9999; 1 is used.'])
  })

  test('is first in the link, where there is one, and the end last', () => {
    expect(writeCase({ title: '', state: usual, ...unmended }, library)).toBe('end=1')
    expect(writeCase({ title: ' a b ', state: usual, ...unmended }, library)).toBe('title=a+b&end=1')
    expect(writeCase({ title: 'a', state: { ...usual, pass: 3 }, ...unmended }, library)).toBe(
      'title=a&pass=3&end=1',
    )
    expect(writeCase({ title: '', state: { ...usual, pass: 3 }, ...unmended }, library)).toBe('pass=3&end=1')
  })
})

describe('a place', () => {
  test.each([
    ['L100', 0],
    ['L1', 99],
    ['R1', 100],
    ['R100', 199],
    ['R0.5', 99.5],
    ['L0.5', 99.5],
    ['L112', -12],
    ['R112', 211],
    ['R12.34567', 111.3457],
    ['L0.00004', null],
    ['R0', null],
    ['L0.0', null],
    ['R', null],
    ['12', null],
    ['R12.', null],
    ['R.5', null],
    ['r12', null],
    ['R12 ', null],
    [' R12', null],
    ['xR12', null],
    ['R-12', null],
    ['R12.5.5', null],
    [`R${'9'.repeat(41)}`, null],
    [`R1.${'1'.repeat(40)}`, 100.1111],
    [`R1.${'1'.repeat(41)}`, null],
  ])('%s is %d', (text, x) => {
    expect(readCarriagePosition(text)).toBe(x)
  })

  test.each([
    [99, 'L1'],
    [99.00004, 'L1'],
    [99.0001, 'R0.0001'],
    [99.5, 'R0.5'],
    [100, 'R1'],
    [-12, 'L112'],
    [211.25, 'R112.25'],
  ])('%d is written %s', (x, text) => {
    expect(writeCarriagePosition(x)).toBe(text)
  })

  test.each([
    ['L100-R100', { first: 0, last: 199 }],
    ['R3-R3', { first: 102, last: 102 }],
    ['R3', null],
    ['R3-', null],
    ['-R3', null],
    ['R3-R5-R7', null],
    ['R5-R3', null],
    ['', null],
  ])('the needles %s are %j', (text, bed) => {
    expect(readBed(text)).toEqual(bed)
    if (bed) expect(writeBed(toBed(bed))).toBe(text)
  })
})

describe('names that a link may have', () => {
  test('are its own keys only, once each but for what is broken', () => {
    const said = (text: string): string[] => read(text, library).troubles.map(({ sentence }) => sentence)
    expect(said('v=1&v=1')).toEqual([])
    expect(said('v=1&v=2')).toEqual([
      'The link gives “v” more than once; the last, “2”, counts.',
      'The link is of version “2”, which is not known here; it was read as version 1.',
    ])
    expect(said('a=1&b=1&c=1&d=1')).toEqual([
      "This site doesn't know “a”, so it is left out. And 3 more of this kind.",
    ])
    expect(said('a=1&a=2&a=3&a=4')).toHaveLength(1)
    expect(said('?#pass=2')[0]).toMatch(/^This site doesn't know “#pass”/)
  })

  test('are read after one # or ? only', () => {
    expect(read('#pass=2', library).state.pass).toBe(2)
    expect(read('?pass=2', library).state.pass).toBe(2)
    expect(read('note=%23pass', library).state.note).toBe('#pass')
    expect(read('note=a#b?c', library).state.note).toBe('a#b?c')
  })
})

describe('a state', () => {
  test('with a whole bed in part is written with its needles', () => {
    expect(write({ ...usual, bed: { first: toNeedle(0), last: toNeedle(198) } }, library)).toBe(
      'needles=L100-R99',
    )
    expect(write({ ...usual, bed: { first: toNeedle(1), last: toNeedle(199) }, at: -11 }, library)).toBe(
      'needles=L99-R100',
    )
  })

  test('is written with its faults sorted, and leaves them as they were', () => {
    const faults = ['strip.3.seized', 'pin.4.low'].map((id) => read(`break=${id}`, library).state.faults[0]!)
    expect(write({ ...usual, faults }, library)).toBe('break=pin.4.low&break=strip.3.seized')
    expect(faults.map(({ kind }) => kind)).toEqual(['strip.seized', 'pin.low'])
  })

  test('with a card that is not there has the main card’s rows', () => {
    expect(rowsOf({ kind: 'site', id: 'gone' }, library)).toBe(library.cards.get('main'))
  })

  test('of a hole in a row beyond its card is without it', () => {
    const ids = (text: string): number => read(text, library).state.faults.length
    expect(ids('break=card.torn.4.1')).toBe(1)
    expect(ids('break=card.torn.5.1')).toBe(0)
    expect(ids('break=card.blocked.5.1')).toBe(0)
    expect(ids('card=none&break=card.torn.200.1')).toBe(1)
    expect(ids('break=pin.5.low')).toBe(1)
    expect(ids('card=x.AAAA&break=card.torn.2.1')).toBe(0)
  })
})

describe('a link that names nothing', () => {
  const said = (text: string): string[] => read(text, library).troubles.map(({ sentence }) => sentence)

  test.each([
    'http://example.org/workbench/ ',
    'https://example.org/workbench/',
    ' file:///stick/index.html',
  ])('is said of the address %s, without the spaces round it', (address) => {
    expect(said(address)).toEqual([
      `The address “${address.trim()}” has nothing after a “#”, so it says nothing about a machine.`,
    ])
  })

  test('is said of a value whose name is but a space', () => {
    expect(said('%20=3')).toEqual(['The link has a value without a name, which is left out.'])
  })
})
