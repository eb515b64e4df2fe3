import { describe, expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { advisedCourse } from '@/find/advised-course.ts'
import { bestCourse, confusedWith } from '@/find/best-course.ts'
import { needleChances, stiffMs } from '@/find/chances.ts'
import { type DealtMachine, dealtMachine } from '@/find/deal-machine.ts'
import { machineFaults } from '@/find/exhaustive-views.ts'
import { passesMinutes } from '@/find/pass-time.ts'
import { dealtFault, practiceFault, practisedMachine } from '@/find/practice.ts'
import { kindAndPlace, type NotedPass } from '@/find/query.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import { type Fault, faultId } from '@/mechanism/fault.ts'
import { contradict } from '@/mechanism/fault-list.ts'
import { rowsOf } from '@/link/state.ts'

const library = cardLibrary(cardsFolder)
const card = rowsOf({ kind: 'site', id: library.main }, library)

/** The first pass that somebody notes. */
const start: NotedPass = { card, row: 1, way: 1, speed: 500, needles: '' }

/** A machine with one fault, as new but for that. */
const alone = (fault: Fault): DealtMachine => ({ faults: [fault], wear: 0, seed: 1 })

/** What links with `practice` from 0 on have dealt since the first of them was given away. */
const dealtBefore = [
  ...([
    'strip.2.slow',
    'strip.1.slow',
    'needle.L68.bent',
    'retainer.worn=12',
    'belt.timing=3',
    'belt.timing=3',
  ] as const),
  ...([
    'strip.8.seized',
    'card.locked',
    'retainer.worn=12',
    'strip.4.slow',
    'pawl.left',
    'strip.2.seized',
  ] as const),
  ...([
    'strip.5.slow',
    'retainer.worn=12',
    'strip.6.slow',
    'catch.L23.broken',
    'pawl.left',
    'needle.L42.bent',
  ] as const),
  ...([
    'retainer.worn=12',
    'pawl.double',
    'belt.timing=3',
    'pawl.left',
    'strip.1.over',
    'needle.R99.bent',
  ] as const),
  ...([
    'rocker.4.dead',
    'strip.3.slow',
    'belt.timing=3',
    'strip.6.slow',
    'belt.timing=3',
    'strip.1.slow',
  ] as const),
  ...([
    'needle.L87.stiff',
    'strip.8.slow',
    'needle.R17.bent',
    'pawl.left',
    'belt.timing=3',
    'needle.L48.stiff',
  ] as const),
  ...([
    'retainer.worn=12',
    'retainer.worn=12',
    'needle.L38.bent',
    'retainer.worn=12',
    'needle.L3.stiff',
    'strip.7.slow',
  ] as const),
  ...([
    'pawl.double',
    'card.reversed',
    'card.locked',
    'retainer.worn=12',
    'strip.8.slow',
    'retainer.worn=12',
  ] as const),
]

describe('practice', () => {
  test('deals for ever what a link with “practice” has dealt', () => {
    expect(dealtBefore.map((_, seed) => faultId(practiceFault(seed)))).toEqual(dealtBefore)
  })

  test('deals of every kind there is today for a link with “deal”, which counts before “practice”', () => {
    const kinds = new Set(Array.from({ length: 3000 }, (_, seed) => dealtFault(seed).kind))
    expect(kinds).toEqual(new Set(machineFaults().map(({ kind }) => kind)))
    expect(practisedMachine({ practice: 3, deal: 5, level: 1 })).toEqual(alone(dealtFault(5)))
    expect(practisedMachine({ practice: 3, deal: null, level: 1 })).toEqual(alone(practiceFault(3)))
    expect(practisedMachine({ practice: 3, deal: null, level: 3 })).toEqual(alone(practiceFault(3)))
    expect(practisedMachine({ practice: null, deal: null, level: 1 })).toBeNull()
  })

  test('breaks the same part for the same seed, and one of many over many seeds', () => {
    expect(practiceFault(7)).toEqual(practiceFault(7))
    const kinds = new Set(Array.from({ length: 300 }, (_, seed) => practiceFault(seed).kind))
    expect(kinds.size).toBeGreaterThan(20)
  })

  test('shows a best course that proves the fault, and that the page’s own advice does not beat', () => {
    for (const seed of [0, 3, 5, 8]) {
      const fault = practiceFault(seed)
      const { passes, isProved, alike } = bestCourse(fault, start, usualPlace)
      expect(isProved).toBe(true)
      const left = confusedWith(fault, { card, passes, ...usualPlace })
      expect(left.isSound).toBe(false)
      expect(new Set(left.faults.map(kindAndPlace))).toEqual(new Set(alike.map(kindAndPlace)))
      const course = advisedCourse(alone(fault), start, usualPlace, alike)
      const advised = passesMinutes({ card, passes: course.passes })
      expect(passesMinutes({ card, passes })).toBeLessThanOrEqual(advised)
    }
  }, 180_000)

  test('deals two or three faults, or an old machine with four to eight, the same for the same seed', () => {
    for (let seed = 0; seed < 60; seed++) {
      const [few, old] = ([2, 3] as const).map((level) => dealtMachine(seed, level, dealtFault))
      expect([2, 3]).toContain(few!.faults.length)
      expect(few!.wear).toBe(0)
      expect(old!.faults.length).toBeGreaterThanOrEqual(4)
      expect(old!.faults.length).toBeLessThanOrEqual(8)
      for (const { faults } of [few!, old!]) {
        expect(new Set(faults.map(kindAndPlace)).size).toBe(faults.length)
        for (const [n, one] of faults.entries())
          for (const other of faults.slice(n + 1)) expect(contradict(one, other)).toBe(false)
      }
      expect(dealtMachine(seed, 3, dealtFault)).toEqual(old)
    }
    const strips = Array.from({ length: 60 }, (_, seed) =>
      dealtMachine(seed, 3, dealtFault).faults.filter(({ kind }) => kind.startsWith('strip.')),
    )
    expect(strips.filter((own) => own.length > 1).length).toBeGreaterThan(45)
  })

  test('wears the needles of an old machine as often in each way as the tables have it', () => {
    const needles = Array.from({ length: 400 }, (_, seed) => dealtMachine(seed, 3, dealtFault).faults)
      .flat()
      .filter(({ kind }) => kind.startsWith('needle.'))
    const { noHold, stiff, gone } = needleChances
    for (const [kind, chance] of [
      ['needle.bent', noHold],
      ['needle.stiff', stiff],
      ['needle.gone', gone],
    ] as const) {
      const own = needles.filter((fault) => fault.kind === kind)
      expect(own.length / needles.length).toBeCloseTo(chance / (noHold + stiff + gone), 1)
      expect(new Set(own.map(({ amount }) => amount))).toEqual(
        new Set([kind === 'needle.stiff' ? stiffMs : null]),
      )
      expect(new Set(own.map(({ at: [needle] }) => needle)).size).toBeGreaterThan(own.length / 2)
    }
    // A sound reader has most of its two hundred needles right: an old one's are no more than a few.
    expect(needles.length / 400).toBeGreaterThan(0.5)
    expect(needles.length / 400).toBeLessThan(4)
  })
})
