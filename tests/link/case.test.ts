import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { readCase, titleCharacters, writeCase } from '@/link/case.ts'
import { defaultState, read } from '@/link/read.ts'
import { faultId } from '@/mechanism/fault.ts'
import { goldenCases } from '../golden/case-links.ts'
import { states } from './arbitraries.ts'
import { library } from './library.ts'
import { mutated } from './mutated.ts'

const siteLibrary = cardLibrary(cardsFolder)
const usual = defaultState(library)
/** What a case says of work before any is done. */
const unmended = { done: '', after: null, left: [] } as const

describe('a case once sent to a customer', () => {
  test.each(goldenCases)('still says the same: “$text”', ({ text, title, note, faults, rest, mended }) => {
    const reading = readCase(text, siteLibrary)
    expect({ ...reading, left: reading.left.map(faultId) }).toMatchObject(mended ?? unmended)
    expect(reading.title).toBe(title)
    expect(reading.state.note).toBe(note)
    expect(reading.state.faults.map(faultId)).toEqual(faults)
    expect({ ...reading.state, note: '', faults: [] }).toEqual(read(rest, siteLibrary).state)
    expect(reading.troubles).toEqual([])
    expect(reading.isCut).toBe(false)
  })

  test.each(goldenCases)('keeps its form: “$text”', ({ text }) => {
    expect(writeCase(readCase(text, siteLibrary), siteLibrary)).toBe(text)
  })

  test.each(goldenCases)('is read however much of its end is lost: “$text”', ({ text, title }) => {
    for (let length = 1; length < text.length; length++) {
      const reading = readCase(text.slice(0, length), siteLibrary)
      expect(reading.isCut).toBe(true)
      expect(title.startsWith(reading.title)).toBe(true)
      expect(reading.state.note).not.toContain('\uFFFD')
    }
    expect(readCase('', siteLibrary).isCut).toBe(false)
  })
})

describe('a case’s link', () => {
  test('is given back as it was, with nothing to say', () => {
    fc.assert(
      fc.property(states, fc.string({ unit: 'grapheme', maxLength: 40 }), (state, text) => {
        const { title } = readCase(writeCase({ title: text, state, ...unmended }, library), library)
        const reading = readCase(writeCase({ title, state, ...unmended }, library), library)
        expect(reading).toEqual({ title, state, ...unmended, troubles: [], isCut: false })
      }),
      { numRuns: 400 },
    )
  })

  test('has one canonical form, whatever was read', () => {
    fc.assert(
      fc.property(mutated, fc.string({ unit: 'binary', maxLength: 120 }), (text, title) => {
        const pair = new URLSearchParams({ title: title.replace(/\p{Cs}/gu, '') }).toString()
        const written = writeCase(readCase(`${pair}&${text}&end=1`, library), library)
        const again = readCase(written, library)
        expect(again.troubles).toEqual([])
        expect(again.isCut).toBe(false)
        expect(writeCase(again, library)).toBe(written)
      }),
      { numRuns: 1500 },
    )
  })

  test('is read without an error however it is cut or spoilt', () => {
    fc.assert(
      fc.property(mutated, fc.nat(400), (text, length) => {
        const reading = readCase(`title=%E2%82${text}`.slice(0, length), library)
        expect(reading.state.pass).toBeGreaterThan(0)
        expect(Array.from(reading.title).length).toBeLessThanOrEqual(titleCharacters)
      }),
      { numRuns: 1500 },
    )
  })

  test('has what came of the work, and what was left of its faults only', () => {
    const faults = 'break=strip.3.seized&break=needle.R12.bent'
    const of = (text: string) => readCase(`${faults}&${text}&end=1`, library)
    expect(of('after=7.9&done=Two+things').troubles).toEqual([])
    expect(of('after=7.9&done=Two+things')).toMatchObject({
      done: 'Two things',
      after: { shown: 7, faults: 9 },
      left: [],
    })
    expect(of('after=mended&left=strip.3.seized').left.map(faultId)).toEqual(['strip.3.seized'])
    for (const bad of ['9.7', '0.0', '1', '1.', '-1.9', '1.123456', 'sound', '']) {
      expect(of(`after=${bad}`).after).toBeNull()
      expect(of(`after=${bad}`).troubles).toHaveLength(1)
    }
    const stranger = of('after=mended&left=strip.4.seized')
    expect([stranger.left, stranger.troubles.length]).toEqual([[], 1])
    expect([of('left=strip.3.seized').left, of('left=strip.3.seized').troubles.length]).toEqual([[], 1])
    const long = of(`after=mended&done=${'🧶'.repeat(281)}`)
    expect([long.done, long.troubles.length]).toEqual(['🧶'.repeat(280), 1])
  })

  test('counts as cut where a state’s own link is in its place', () => {
    const reading = readCase('break=strip.3.seized', library)
    expect(reading.isCut).toBe(true)
    expect(reading.state.faults.map(faultId)).toEqual(['strip.3.seized'])
    expect(reading.troubles).toEqual([])
  })

  test('leaves out half a name, and keeps what there is of a note', () => {
    expect(readCase('note=caf%C3%A9&en', library)).toMatchObject({ isCut: true, troubles: [] })
    expect(readCase('note=caf%C3', library).state.note).toBe('caf')
    expect(readCase('note=a+%F0%9F%A7', library).state.note).toBe('a ')
    expect(readCase('note=100%+sure&end=1', library).state.note).toBe('100% sure')
  })
})

describe('a title', () => {
  test.each([
    ['two\nlines', 'two·lines'],
    ['\u202eturned\u202c', '·turned·'],
    ['  in blanks  ', 'in blanks'],
    ['<img src=x onerror=alert(1)>', '<img src=x onerror=alert(1)>'],
  ])('%j is shown as %j', (title, shown) => {
    const text = `${new URLSearchParams({ title }).toString()}&end=1`
    expect(readCase(text, library).title).toBe(shown)
    expect(readCase(writeCase({ title, state: usual, ...unmended }, library), library).title).toBe(shown)
  })

  test('that is too long is cut, and that is said', () => {
    const reading = readCase(`title=${'🧶'.repeat(titleCharacters + 1)}&end=1`, library)
    expect(Array.from(reading.title)).toHaveLength(titleCharacters)
    expect(reading.troubles.map(({ sentence }) => sentence)).toEqual([
      `The title is longer than ${titleCharacters} characters and is cut there.`,
    ])
    expect(readCase(`title=${'x'.repeat(titleCharacters)}&end=1`, library).troubles).toEqual([])
  })

  test('given twice is the last, and that is said', () => {
    const reading = readCase('title=one&title=two&end=1', library)
    expect(reading.title).toBe('two')
    expect(reading.troubles).toHaveLength(1)
  })
})
