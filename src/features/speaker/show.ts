import type { State } from '../../link/state.ts'
import { placeWords } from '../class/place-words.ts'
import { samePlace } from '../class/context.ts'
import type { ClassState, ClassStore } from '../class/state.ts'
import type { ClassStep } from '../class/step.ts'
import { type Lesson, waits } from '../class/navigation.ts'
import { required, tell } from '../../browser/dom.ts'
import type { Machine } from '../machine/main.ts'
import { nextWords } from './upcoming.ts'

/** A speaker's window: its elements, its chapter, and the class that it follows. */
export interface SpeakerWindow {
  readonly root: HTMLElement
  readonly steps: readonly ClassStep[]
  readonly lesson: Lesson
  readonly machine: Machine
  readonly store: ClassStore
  /** Sets the machine to what the class sees; takes the state of what is shown, for a class that has not moved on. */
  readonly follow: (own: State) => void
}

/** Shows every prediction with its answer, which the teacher knows. */
export const showAnswers = (root: HTMLElement): void => {
  for (const form of root.querySelectorAll<HTMLFormElement>('.predict')) {
    required(form, 'fieldset', HTMLFieldSetElement).disabled = true
    required(form, '.predict-answer', HTMLDetailsElement).open = true
  }
}

/** Shows where the class is, what comes next, and what covers its screen. */
export const showPlace = ({ root, steps, lesson, store }: SpeakerWindow): void => {
  const state = store.state()
  const say = (name: string, words: string): void => {
    tell(required(root, name, HTMLElement), words)
  }
  const titles = steps.map(({ title }) => title)
  say('.speaker-place', placeWords(state, lesson))
  say('.speaker-next', nextWords(state, lesson, titles))
  const code = state.qr ? 'The class sees the code to follow along.' : ''
  say('.speaker-covered', state.blank ? 'The class sees a blank screen.' : code)
  const press = (command: string, isPressed: boolean): void => {
    root.querySelector(`[data-command="${command}"]`)?.setAttribute('aria-pressed', String(isPressed))
  }
  press('blank', state.blank)
  press('code', state.qr)
  press('pointer', state.pointer !== undefined)
  required(root, '[data-command="reveal"]', HTMLButtonElement).disabled = !waits(state, lesson)
}

/** Writes the class's question with its answer, and gives the machine's state that belongs to it. */
const ask = async (
  { root, machine }: SpeakerWindow,
  { quiz, revealed }: ClassState,
): Promise<State | undefined> => {
  if (!quiz) return undefined
  const { quizScene } = await import('../class/quiz.ts')
  const { library } = machine.store
  const chapter = Number(root.dataset.chapter)
  await quizScene(required(root, '.class-question', HTMLElement), chapter, quiz, library, true)
  const scene = await quizScene(document.createElement('div'), chapter, quiz, library, revealed)
  return scene?.state
}

/** Shows the step or the question that the class is at, and the machine as the class sees it. */
export const enter = async (window: SpeakerWindow): Promise<void> => {
  const { root, steps, machine, store, follow } = window
  const state = store.state()
  const step = steps[state.step]
  const scene = step?.scene(state.revealed)
  const own = (await ask(window, state)) ?? scene?.state
  // A faster hand has gone on meanwhile.
  if (!own || !samePlace(state, store.state())) return
  for (const { element } of steps)
    element.toggleAttribute('data-current', element === step?.element && !state.quiz)
  required(root, '.class-question', HTMLElement).hidden = state.quiz === undefined
  machine.player.stop()
  machine.stage.show(state.quiz ? 'chain' : (scene?.figure ?? ''))
  follow(own)
}
