/** What the windows of a class share: the class view itself, and the speaker's window. */

import type { questionScene } from './shared/question-scene.ts'

export { writeAddress } from './shared/address.ts'
export { channelTrouble, joinClass } from './shared/channel.ts'
export { leadByKeys } from './shared/key-owner.ts'
export type { Command } from './shared/keys.ts'
export { bindLetterKeys } from './shared/letter-keys.ts'
export { bindMachine, setMachine } from './shared/machine-link.ts'
export { back, forward, reveal, toStep } from './shared/navigation.ts'
export { openClass } from './shared/open-class.ts'
export { createPointer } from './shared/pointer.ts'
export { awaitsAnswer, type ChapterOutline, isSamePosition, positionWords } from './shared/position.ts'
export { newSeed, session } from './shared/session.ts'
export type { ClassState, ClassStore } from './shared/state.ts'
export { type ClassStep, sceneAt } from './shared/step.ts'
export { goToChapter } from './shared/windows.ts'

/** Loads the code that shows a question with its machine: only a class that has come to its quiz needs it. */
export const loadQuestionScene = async (): Promise<typeof questionScene> =>
  (await import('./shared/question-scene.ts')).questionScene
