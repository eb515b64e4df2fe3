import { describe, expect, test } from 'vitest'
import type { ChapterOutline, ClassState } from '@/features/class/index.ts'
import { durationWords, timeOfDay } from '@/features/speaker/clock.ts'
import { changeOf } from '@/features/speaker/actions.ts'
import { positionWords } from '@/features/class/index.ts'
import { upcomingWords } from '@/features/speaker/upcoming.ts'
import { classAt } from '../class/class-at.ts'

const first = classAt()
const outline: ChapterOutline = { asks: [false, true, false], questions: 2 }
const titles = ['One', 'Two', 'Three']

describe('what the speaker reads', () => {
  test.each<[string, string, Partial<ClassState>]>([
    ['Step 1 of 3', '“Two”', {}],
    ['Step 1 of 3, part 1 of 2', 'the rest of the text', { parts: 2 }],
    ['Step 1 of 3, part 2 of 2', '“Two”', { parts: 2, part: 999 }],
    ['Step 2 of 3', 'reveals the answer', { step: 1 }],
    ['Step 2 of 3', '“Three”', { step: 1, revealed: true }],
    ['Step 2 of 3', 'uncovers the screen', { step: 1, blank: true }],
    ['Step 3 of 3', 'question 1 of the class quiz', { step: 2 }],
    ['Question 1 of 2', 'reveals the answer', { step: 2, quiz: { seed: 1, question: 0 } }],
    [
      'Question 1 of 2',
      'question 2 of the class quiz',
      { step: 2, revealed: true, quiz: { seed: 1, question: 0 } },
    ],
    [
      'Question 2 of 2',
      'nothing: this is the end of the chapter',
      { step: 2, revealed: true, quiz: { seed: 1, question: 1 } },
    ],
  ])('%s: next %s', (place, next, patch) => {
    expect(positionWords({ ...first, ...patch }, outline)).toBe(place)
    expect(upcomingWords({ ...first, ...patch }, outline, titles)).toBe(next)
  })
})

describe('the speaker’s commands', () => {
  test('uncover a covered screen first, and go on after that', () => {
    const covered = { ...first, blank: true, qr: true }
    for (const command of ['forward', 'back', 'reveal', 'first', 'last'] as const)
      expect(changeOf(command, covered, outline)).toEqual({ blank: false, qr: false })
    expect(changeOf('blank', covered, outline)).toEqual({ blank: false })
    expect(changeOf('code', first, outline)).toEqual({ qr: true })
    expect(changeOf('forward', first, outline)).toMatchObject({ step: 1, revealed: false, link: '' })
    expect(changeOf('last', first, outline)).toMatchObject({ step: 2 })
  })
  test('change nothing where there is nothing more', () => {
    expect(changeOf('back', first, outline)).toBeUndefined()
    expect(changeOf('reveal', first, outline)).toBeUndefined()
  })
})

describe('the clock', () => {
  test('shows the time of the day, and how long the class has durationWords', () => {
    expect(timeOfDay(new Date(2020, 1, 3, 9, 5))).toBe('9:05')
    expect([0, 999, 7_000, 61_500, 3_690_000, -5].map(durationWords)).toEqual([
      '0:00',
      '0:00',
      '0:07',
      '1:01',
      '61:30',
      '0:00',
    ])
  })
})
