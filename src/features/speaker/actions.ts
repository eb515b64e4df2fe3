import {
  back,
  type ChapterOutline,
  type ClassState,
  type ClassStore,
  type Command,
  forward,
  newSeed,
  reveal,
  toStep,
} from '../class/index.ts'

/** The commands of a class's windows that the speaker's has. */
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

/** The commands that change where the class is, or what covers its screen. */
type ChangeCommand = Exclude<SpeakerCommand, 'pointer'>

/** What a command changes; undefined where there is nothing to change. A covered screen is uncovered first. */
export const changeOf = (
  command: ChangeCommand,
  state: ClassState,
  outline: ChapterOutline,
): Partial<ClassState> | undefined => {
  if (command === 'blank') return { blank: !state.blank }
  if (command === 'code') return { qr: !state.qr }
  if (state.blank || state.qr) return { blank: false, qr: false }
  switch (command) {
    case 'forward':
      return forward(state, outline, newSeed())
    case 'back':
      return back(state, outline)
    case 'reveal':
      return reveal(state, outline)
    case 'first':
      return toStep(state, outline, 0)
    case 'last':
      return toStep(state, outline, outline.asks.length - 1)
  }
}

/** Runs a command; returns false where there was nothing to do. */
export const runCommand = (command: ChangeCommand, store: ClassStore, outline: ChapterOutline): boolean => {
  const change = changeOf(command, store.state(), outline)
  if (change) store.set(change, 'local')
  return change !== undefined
}
