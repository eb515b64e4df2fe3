import { dataOf, element, required } from '../../browser/dom.ts'
import { say, showOwnPlace } from '../machine/index.ts'
import type { ClassView } from './context.ts'
import { layOut, sizes, type TextLayout } from './fit-text.ts'
import { writeAddress } from './shared/address.ts'
import { bindMachine } from './shared/machine-link.ts'
import { awaitsAnswer, isSamePosition, positionWords } from './shared/position.ts'
import type { ClassState } from './shared/state.ts'
import { type ClassScene, sceneAt } from './shared/step.ts'

/**
 * Shows the step or the question where the class is, its text part by part, and keeps the address with it. Returns a
 * function that gives the number of parts on this screen.
 */
export const startStepView = ({
  root,
  machine,
  store,
  steps,
  outline,
  travel,
}: ClassView): (() => number) => {
  const body = required(root, '.class-body', HTMLElement)
  const question = required(body, '.class-question', HTMLElement)
  const position = required(root, '.class-place', HTMLElement)
  const followLink = bindMachine(machine, store, travel.follow)
  const ids = steps.map(({ id }) => id)
  let scene: ClassScene | undefined
  let isOpening = true
  let layout: TextLayout | undefined

  const showPart = (): void => {
    if (!layout) return
    const { parts } = layout
    layout.show(store.state().part)
    position.textContent = positionWords({ ...store.state(), parts }, outline)
    // The part itself is not changed: another window's screen may have room for fewer or more.
    store.set({ parts }, 'local')
  }
  const layOutScene = (): void => {
    if (!scene) return
    const isWide = root.matches('[data-quiz][data-waits]')
    layout = layOut(body, scene, isWide ? sizes.screen : sizes.column)
    showPart()
  }
  const sceneOf = async ({ step, quiz, revealed }: ClassState): Promise<ClassScene | undefined> => {
    const place = machine.ownPlace.now()
    if (!quiz) {
      const own = steps[step]?.scene(revealed)
      return own && sceneAt(own, place)
    }
    const { questionScene } = await import('./shared/question-scene.ts')
    const draft = element('div')
    return questionScene(draft, Number(dataOf(root, 'chapter')), quiz, machine.store.library, revealed, place)
  }
  const again = (): void => {
    if (scene) travel.go(scene.state, scene.to)
  }
  const enter = async (state: ClassState): Promise<void> => {
    const found = await sceneOf(state)
    // Meanwhile somebody may have gone on.
    if (!found || !isSamePosition(state, store.state())) return
    scene = found
    machine.player.stop()
    travel.stop()
    // What is said of the link that opened the page is not yet read then.
    if (!isOpening) say(root, '')
    isOpening = false
    for (const [n, step] of steps.entries())
      step.element.toggleAttribute('data-current', n === state.step && !state.quiz)
    question.hidden = state.quiz === undefined
    if (state.quiz) question.replaceChildren(...(found.pieces[0]?.parentElement?.children ?? []))
    root.toggleAttribute('data-quiz', state.quiz !== undefined)
    root.toggleAttribute('data-waits', awaitsAnswer(state, outline))
    machine.stage.show(found.figure, found.scene)
    if (store.state().link === '') travel.go(found.state, found.to)
    else followLink(found.state)
    layOutScene()
  }

  let previous = store.state()
  store.subscribe((state, origin) => {
    const before = previous
    previous = state
    if (!isSamePosition(state, before) || state.first !== before.first) {
      history.replaceState(history.state, '', writeAddress(location.href, state, ids))
      void enter(state)
      return
    }
    if (state.part !== before.part) showPart()
    if (origin === 'remote' && state.link !== before.link && scene && state.link !== '')
      followLink(scene.state)
  })
  required(root, '.class-step-again', HTMLButtonElement).addEventListener('click', again)
  showOwnPlace(machine, position, again)
  addEventListener('resize', layOutScene)
  // The text's own faces arrive after it, and take other room than those shown until then.
  document.fonts.addEventListener('loadingdone', layOutScene)
  history.replaceState(history.state, '', writeAddress(location.href, store.state(), ids))
  void enter(store.state())
  return () => layout?.parts ?? 1
}
