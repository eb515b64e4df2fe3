import { say } from '../machine/controls.ts'
import { element, required } from '../../browser/dom.ts'
import { writeAddress } from './address.ts'
import { type Laid, layOut, sizes } from './fit-text.ts'
import { tieLink } from './link.ts'
import { placeWords } from './place-words.ts'
import { type Room, samePlace } from './context.ts'
import type { ClassState } from './state.ts'
import type { Scene } from './step.ts'
import { waits } from './class-lesson.ts'

/**
 * Shows the step or the question where the class is, its text part by part, and keeps the address with it. Gives what
 * tells how many parts there are on this screen.
 */
export const showPlaces = ({ root, machine, store, steps, lesson, travel }: Room): (() => number) => {
  const body = required(root, '.class-body', HTMLElement)
  const asked = required(body, '.class-question', HTMLElement)
  const place = required(root, '.class-place', HTMLElement)
  const take = tieLink(machine, store, travel.follow)
  const ids = steps.map(({ id }) => id)
  let scene: Scene | undefined
  let laid: Laid | undefined

  const showPart = (): void => {
    if (!laid) return
    const { parts } = laid
    laid.show(Math.min(store.state().part, parts - 1))
    place.textContent = placeWords({ ...store.state(), parts }, lesson)
    // The part stays as it was asked for: another window's screen may have room for fewer or more.
    store.set({ parts }, 'here')
  }
  const lay = (): void => {
    if (!scene) return
    const isWide = root.matches('[data-quiz][data-waits]')
    laid = layOut(body, scene, isWide ? sizes.screen : sizes.column)
    showPart()
  }
  const sceneOf = async ({ step, quiz, revealed }: ClassState): Promise<Scene | undefined> => {
    if (!quiz) return steps[step]?.scene(revealed)
    const { quizScene } = await import('./quiz.ts')
    const drafted = element('div')
    return quizScene(drafted, Number(root.dataset.chapter), quiz, machine.store.library, revealed)
  }
  const enter = async (state: ClassState): Promise<void> => {
    const found = await sceneOf(state)
    // A faster hand has gone on meanwhile.
    if (!found || !samePlace(state, store.state())) return
    scene = found
    machine.player.stop()
    travel.stop()
    say(root, '')
    for (const [n, step] of steps.entries())
      step.element.toggleAttribute('data-current', n === state.step && !state.quiz)
    asked.hidden = state.quiz === undefined
    if (state.quiz) asked.replaceChildren(...(found.pieces[0]?.parentElement?.children ?? []))
    root.toggleAttribute('data-quiz', state.quiz !== undefined)
    root.toggleAttribute('data-waits', waits(state, lesson))
    machine.stage.show(found.figure)
    if (store.state().link === '') travel.go(found.state, found.to)
    else take(found.state)
    lay()
  }

  let before = store.state()
  store.subscribe((state, from) => {
    const last = before
    before = state
    if (!samePlace(state, last)) {
      history.replaceState(history.state, '', writeAddress(location.href, state, ids))
      void enter(state)
      return
    }
    if (state.part !== last.part) showPart()
    if (from === 'there' && state.link !== last.link && scene && state.link !== '') take(scene.state)
  })
  required(root, '.class-step-again', HTMLButtonElement).addEventListener('click', () => {
    if (scene) travel.go(scene.state, scene.to)
  })
  addEventListener('resize', lay)
  // The faces of the text arrive after it, and take other room than those that stood in for them.
  document.fonts.addEventListener('loadingdone', lay)
  history.replaceState(history.state, '', writeAddress(location.href, store.state(), ids))
  void enter(store.state())
  return () => laid?.parts ?? 1
}
