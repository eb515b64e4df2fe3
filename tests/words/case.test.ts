import { describe, expect, test } from 'vitest'
import { exampleOf } from '@/find/battery.ts'
import { faultId } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { faultKinds, type FaultKindName } from '@/mechanism/fault-kinds.ts'
import { sampleOf, wrongNeedles } from '@/mechanism/sample.ts'
import { type Scenario, soundScenario } from '@/mechanism/scenario.ts'
import {
  avoid,
  inShort,
  keeping,
  meanwhile,
  repairs,
  repairTime,
  wearWords,
  wrongLead,
  wrongParts,
} from '@/words/case.ts'
import { countWords, sampleWords } from '@/words/case-fabric.ts'
import { machine } from '../mechanism/make.ts'
import { toNeedle } from '@/mechanism/indices.ts'

const card = [0xa53c96, 0x1f07e8, 0x800001, 0x5b6d13, 0xffffff, 0, 0x74d80b, 0x000800]
const kinds = Object.keys(faultKinds) as FaultKindName[]

const scenario = (ids: readonly string[], more: Partial<Scenario> = {}): Scenario => ({
  ...soundScenario(card),
  faults: ids.map(faultOf),
  ...more,
})

const shown = (ids: readonly string[], more: Partial<Scenario> = {}): string => {
  const run = machine(card, ids, more)
  return sampleWords(run, sampleOf(run, 1))
}

/** The trade's words that a customer need not know; those that are explained where they stand are left out. */
const jargon = /\b(butt|cam|trick|feeler|selected|seized|latch|dip|pass|unmoved)\b/i

describe('what is wrong, in a customer’s words', () => {
  test.each(kinds)('%s reads in short sentences without the trade’s own words', (kind) => {
    const one = scenario([faultId(exampleOf(kind))])
    const texts = [
      ...wrongParts(one.faults).map(({ words }) => words),
      ...[inShort(one), meanwhile(one), repairTime(one), keeping(one)],
      ...repairs(one),
      ...(avoid(one) === '' ? [] : [avoid(one)]),
    ]
    for (const text of texts) {
      expect(text).toMatch(/^[A-Z].*[.]$/)
      expect(text).not.toMatch(jargon)
      expect(text).not.toMatch(/undefined|NaN|null|[!—]|  | \./)
      for (const sentence of text.split(/(?<=[.])\s/)) expect(sentence.length).toBeLessThan(190)
    }
  })

  test('names the place', () => {
    expect(wrongParts([faultOf('strip.3.seized')])[0]?.name).toBe('Strip 3')
    expect(wrongParts([faultOf('needle.R12.gone')])[0]?.name).toBe('Needle R12')
    expect(wrongParts([faultOf('card.torn.4.7')])[0]?.words).toContain('row 4, at column 7')
  })

  test('says how many things are wrong, or that none is', () => {
    expect(wrongLead(scenario([]))).toBe('As shown here the machine is sound.')
    expect(wrongLead(scenario(['strip.3.seized']))).toBe('One thing is wrong.')
    expect(wrongLead(scenario(['strip.3.seized', 'needle.R12.gone']))).toBe('Two things are wrong.')
    expect(wrongLead(scenario([], { wear: 0.8 }))).toContain('worn')
    // How worn it is was never measured, so no number is there that reads as if it had been.
    for (const wear of [0.01, 0.5, 0.8, 1]) expect(wearWords(scenario([], { wear }))).not.toMatch(/\d/)
    expect(wearWords(scenario([], { wear: 0.8 }))).toContain('badly worn')
    expect(wearWords(scenario([]))).toBe('')
  })

  test('gives the strictest advice where several things are wrong', () => {
    expect(meanwhile(scenario(['strip.3.seized', 'needle.R12.gone']))).toContain('leave the carriage')
    expect(meanwhile(scenario(['needle.R12.bent', 'needle.R20.bent']))).toContain('R12 and R20')
  })

  test('keeps a needle that knits plain in use: out of use it would leave a ladder', () => {
    for (const id of ['catch.R12.broken', 'needle.R12.bent']) {
      expect(meanwhile(scenario([id]))).toMatch(/works perfectly, so leave it in use/)
      expect(avoid(scenario([id]))).toMatch(/do not take it out of use: that would leave a ladder/)
    }
  })

  test('in short names no needle, row or column, and the time is that of the longest repair', () => {
    for (const kind of kinds) expect(inShort(scenario([faultId(exampleOf(kind))]))).not.toMatch(/\d|column/i)
    expect(repairTime(scenario(['card.locked']))).toContain('few minutes')
    expect(repairTime(scenario(['card.locked', 'rocker.3.dead']))).toContain('half a day')
    for (const words of [inShort, repairTime, keeping, avoid]) expect(words(scenario([]))).toBe('')
  })

  test('stops everything where a needle has lost its foot', () => {
    const words = scenario(['needle.R12.gone', 'catch.R20.broken'])
    expect(meanwhile(words)).toMatch(/leave the carriage where it is/)
    expect(avoid(words)).toMatch(/do not push the carriage/)
  })

  test('tells each part’s repair apart', () => {
    expect(repairs(scenario(['strip.3.seized', 'needle.R12.gone']))).toEqual([
      expect.stringMatching(/^For strip 3 /),
      expect.stringMatching(/^For needle R12 /),
    ])
    expect(repairs(scenario(['needle.R12.bent', 'needle.R20.bent']))).toHaveLength(1)
    expect(repairs(scenario([]))).toEqual([])
  })
})

describe('what the fabric shows', () => {
  test.each([
    ['a sound machine', [], 'every stitch comes out as the card asks'],
    [
      'a stuck strip',
      ['strip.3.seized'],
      'On every eighth needle, from L94 to R99, the pattern colour is missing',
    ],
    ['a strip stuck forward', ['strip.3.over'], 'the pattern colour comes where it should not be'],
    ['a pin stuck down', ['pin.5.low'], 'every twenty-fourth needle'],
    ['a needle without its foot', ['needle.R12.gone'], 'On needle R12, no stitch is knitted'],
    ['a slack belt', ['belt.slack=2'], 'The pattern is missing altogether: every stitch'],
    ['a gate too high', ['gate.1.high=0.5'], 'Every stitch comes out in the pattern colour'],
    ['a presser worn one way', ['presser.right.worn=0.8'], 'every other one, and right in the others'],
    ['a card that is locked', ['card.locked'], 'The same row of the pattern comes again and again'],
    ['a pawl that does not step', ['pawl.left'], 'another one comes than the one that should'],
    ['a card the wrong way round', ['card.reversed'], 'as in a mirror'],
    ['a belt out by eight', ['belt.timing=8'], 'is 8 stitches further to the left'],
    ['a belt out by sixteen', ['belt.timing=16'], 'is 8 stitches further to the right'],
  ])('of %s', (_, ids, words) => {
    expect(shown(ids)).toContain(words)
  })

  test('of neighbours is a stretch of needles', () => {
    const ids = Array.from({ length: 6 }, (_, n) => `needle.R${n + 1}.gone`)
    expect(shown(ids)).toContain('On every needle from R1 to R6, no stitch is knitted')
  })

  test('tells two faults apart', () => {
    const words = shown(['strip.3.seized', 'needle.R12.gone'])
    expect(words).toContain('On every eighth needle')
    expect(words).toContain('On needle R12, no stitch')
  })

  test('is counted by the model, over the needles in use', () => {
    const run = machine(card, ['strip.3.seized'], { bed: { first: toNeedle(90), last: toNeedle(109) } })
    const sample = sampleOf(run, 1)
    const wrong = sample.rows.reduce((sum, row) => sum + row.wrong.length, 0)
    expect(countWords(sample)).toBe(
      `In the 16 rows shown, ${wrong} of 320 stitches are wrong, on ${wrongNeedles(sample).length} of 20 needles.`,
    )
  })
})
