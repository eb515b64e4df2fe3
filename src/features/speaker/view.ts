import { dataOf, required, setText } from '../../browser/dom.ts'
import type { State } from '../../link/state.ts'
import {
  awaitsAnswer,
  type ChapterOutline,
  type ClassState,
  type ClassStep,
  type ClassStore,
  isSamePosition,
  loadQuestionScene,
  sceneAt,
  positionWords,
} from '../class/index.ts'
import type { Machine } from '../machine/index.ts'
import { upcomingWords } from './upcoming.ts'

/** A speaker's window: its elements, its chapter, and the class that it follows. */
export interface SpeakerWindow {
  readonly root: HTMLElement
  readonly steps: readonly ClassStep[]
  readonly outline: ChapterOutline
  readonly machine: Machine
  readonly store: ClassStore
  /** Sets the machine to what the class sees; `own` is the state of the step or question, for a machine untouched since. */
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
export const showPosition = ({ root, steps, outline, store }: SpeakerWindow): void => {
  const state = store.state()
  const write = (selector: string, words: string): void => {
    setText(required(root, selector, HTMLElement), words)
  }
  const titles = steps.map(({ title }) => title)
  write('.speaker-place', positionWords(state, outline))
  write('.speaker-next', upcomingWords(state, outline, titles))
  const code = state.qr ? 'The class sees the code to follow along.' : ''
  write('.speaker-covered', state.blank ? 'The class sees a blank screen.' : code)
  const press = (command: string, isPressed: boolean): void => {
    root.querySelector(`[data-command="${command}"]`)?.setAttribute('aria-pressed', String(isPressed))
  }
  press('blank', state.blank)
  press('code', state.qr)
  press('pointer', state.pointer !== undefined)
  required(root, '[data-command="reveal"]', HTMLButtonElement).disabled = !awaitsAnswer(state, outline)
}

/** Writes the class's question with its answer; returns the machine's state that belongs to what the class sees of it. */
const showQuestion = async (
  { root, machine }: SpeakerWindow,
  { quiz, revealed }: ClassState,
): Promise<State | undefined> => {
  if (!quiz) return undefined
  const questionScene = await loadQuestionScene()
  const { library } = machine.store
  const place = machine.ownPlace.now()
  const chapter = Number(dataOf(root, 'chapter'))
  await questionScene(required(root, '.class-question', HTMLElement), chapter, quiz, library, true, place)
  const scene = await questionScene(document.createElement('div'), chapter, quiz, library, revealed, place)
  return scene?.state
}

/** Shows the step or the question where the class is, and the machine as the class sees it. */
export const enterPosition = async (window: SpeakerWindow): Promise<void> => {
  const { root, steps, machine, store, follow } = window
  const state = store.state()
  const step = steps[state.step]
  const scene = step?.scene(state.revealed)
  const own = (await showQuestion(window, state)) ?? (scene && sceneAt(scene, machine.ownPlace.now()).state)
  // Meanwhile somebody may have gone on.
  const figure = state.quiz ? 'chain' : scene?.figure
  if (!own || figure === undefined || !isSamePosition(state, store.state())) return
  for (const { element } of steps)
    element.toggleAttribute('data-current', element === step?.element && !state.quiz)
  required(root, '.class-question', HTMLElement).hidden = state.quiz === undefined
  machine.player.stop()
  machine.stage.show(figure, state.quiz ? {} : scene?.scene)
  follow(own)
}
