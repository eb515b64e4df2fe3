import { describe, expect, test } from 'vitest'
import type { ClassState } from '@/features/class/shared/state.ts'
import { back, forward, reveal, toStep } from '@/features/class/shared/navigation.ts'
import type { ChapterOutline } from '@/features/class/shared/position.ts'
import { classAt } from './class-at.ts'

/** Three steps, the second of which asks, and two questions. */
const outline: ChapterOutline = { asks: [false, true, false], questions: 2 }

const first = classAt({ link: 'at=R12' })

/** What is shown, in short: the step or question, and a + once its answer is. */
const shown = ({ step, quiz, revealed }: Pick<ClassState, 'step' | 'quiz' | 'revealed'>): string =>
  `${quiz ? `q${quiz.question}` : String(step)}${revealed ? '+' : ''}`

const walk = (from: ClassState, go: (state: ClassState) => Partial<ClassState> | undefined): string[] => {
  const seen: string[] = []
  let state = from
  for (let move = go(state); move; move = go(state)) {
    state = { ...state, ...move }
    seen.push(shown(state))
  }
  return seen
}

describe('walking through a chapter with a class', () => {
  const way = ['0', '1', '1+', '2', 'q0', 'q0+', 'q1', 'q1+']

  test('shows each answer before it goes on, and the questions after the last step', () => {
    expect(walk(first, (state) => forward(state, outline, 7))).toEqual(way.slice(1))
  })

  test('goes the same way back', () => {
    const last: ClassState = { ...first, step: 2, quiz: { seed: 7, question: 1 }, revealed: true }
    expect(walk(last, (state) => back(state, outline))).toEqual(way.slice(0, -1).reverse())
  })

  test('goes through the parts of a long text, with the machine as a hand has left it', () => {
    const long = { ...first, parts: 3 }
    const on = { ...long, ...forward(long, outline, 1) }
    expect(on).toEqual({ ...long, part: 1 })
    expect({ ...on, ...back(on, outline) }).toEqual(long)
  })

  test('brings what belongs to a step with it', () => {
    expect(forward(first, outline, 1)).toMatchObject({ step: 1, part: 0, parts: 1, link: '' })
  })

  test('has nothing to show where nothing was asked', () => {
    expect(reveal(first, outline)).toBeUndefined()
    expect(reveal({ ...first, step: 1 }, outline)).toMatchObject({ step: 1, revealed: true })
  })

  test('stays within the chapter', () => {
    expect(toStep(first, outline, 99).step).toBe(2)
    expect(toStep(first, outline, -1).step).toBe(0)
  })
})
