import type { Command } from '../class/keys.ts'
import type { ClassState, ClassStore } from '../class/state.ts'
import { newSeed } from '../class/session.ts'
import { back, forward, type Lesson, reveal, toStep } from '../class/navigation.ts'

/** What the speaker's window does of all that the class view's keys do. */
export const speakerCommands = [
  'forward',
  'back',
  'first',
  'last',
  'reveal',
  'blank',
  'code',
  'pointer',
] as const satisfies Command[]

export type SpeakerCommand = (typeof speakerCommands)[number]

/** The commands that change where the class is, or what it sees of it. */
type Order = Exclude<SpeakerCommand, 'pointer'>

/** What a command changes; undefined where there is nothing to change. A covered screen is uncovered first. */
export const changeOf = (
  command: Order,
  state: ClassState,
  lesson: Lesson,
): Partial<ClassState> | undefined => {
  if (command === 'blank') return { blank: !state.blank }
  if (command === 'code') return { qr: !state.qr }
  if (state.blank || state.qr) return { blank: false, qr: false }
  if (command === 'forward') return forward(state, lesson, newSeed())
  if (command === 'back') return back(state, lesson)
  if (command === 'reveal') return reveal(state, lesson)
  return toStep(state, lesson, command === 'first' ? 0 : lesson.asks.length - 1)
}

/** Obeys a command; gives false where there was nothing to do. */
export const obey = (command: Order, store: ClassStore, lesson: Lesson): boolean => {
  const change = changeOf(command, store.state(), lesson)
  if (change) store.set(change, 'here')
  return change !== undefined
}
