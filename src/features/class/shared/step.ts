import { readCarriagePosition } from '../../../link/carriage-position.ts'
import { read } from '../../../link/read.ts'
import { movedPosition, movedTo } from '../../../link/reader-place.ts'
import type { CardLibrary, State } from '../../../link/state.ts'
import type { CardPlace } from '../../../mechanism/bed.ts'
import { dataOf, required } from '../../../browser/dom.ts'
import type { SceneAttributes } from '../../../words/figures/scene-step.ts'

/** What a class sees of a step or question: the machine's state, in which figure, and the pieces of its text. */
export interface ClassScene {
  readonly state: State
  /** The carriage position that the carriage goes on to from there; the state's own where it stays. */
  readonly to: number
  readonly figure: string
  /** How it shows the machine in three dimensions, where that is its figure. */
  readonly scene: SceneAttributes
  readonly pieces: readonly HTMLElement[]
  /** Elements that contain pieces, and nothing else visible. */
  readonly holders: readonly HTMLElement[]
}

/** A scene as it is on a machine with column 1 elsewhere than our texts have it. */
export const sceneAt = (scene: ClassScene, place: CardPlace): ClassScene => ({
  ...scene,
  state: movedTo(scene.state, place),
  to: movedPosition(scene.to, scene.state.pass, scene.state, place),
})

/** A step of the chapter, read from the page. */
export interface ClassStep {
  readonly id: string
  readonly title: string
  readonly element: HTMLElement
  readonly asks: boolean
  /** Its scene, before its answer is shown or with it. */
  readonly scene: (revealed: boolean) => ClassScene
}

/** An element's children that are its text: not headings, and not those that match `but`. */
const ownPieces = (element: Element, but = ''): HTMLElement[] =>
  [...element.children].filter(
    (child): child is HTMLElement =>
      child instanceof HTMLElement && !child.matches(`h2, h3, noscript, summary${but}`),
  )

/** Pieces with each caution replaced by its paragraphs, so that a long one continues under its heading. */
const withCautionsOpened = (pieces: readonly HTMLElement[]): HTMLElement[] =>
  pieces.flatMap((piece) => (piece.matches('.caution') ? ownPieces(piece) : [piece]))

const cautionsOf = (element: Element): HTMLElement[] => [...element.querySelectorAll<HTMLElement>('.caution')]

/** Reads a step from its element. */
export const readStep = (element: HTMLElement, library: CardLibrary): ClassStep => {
  const { state } = read(dataOf(element, 'state'), library)
  const figure = dataOf(element, 'figure')
  const { view, layers, subject, also, hand } = element.dataset
  const shown = { figure, scene: { view, layers, subject, also, hand } }
  const to = readCarriagePosition(element.dataset['to'] ?? '') ?? state.at
  const prediction = element.querySelector<HTMLFormElement>('.predict')
  const step = {
    id: element.id,
    title: element.querySelector('h2')?.textContent.trim() ?? '',
    element,
    asks: prediction !== null,
  }
  const cautions = cautionsOf(element)
  if (!prediction) {
    const scene = { state, to, ...shown, pieces: withCautionsOpened(ownPieces(element)), holders: cautions }
    return { ...step, scene: () => scene }
  }
  const answer = required(prediction, '.predict-answer', HTMLDetailsElement)
  const fieldset = required(prediction, 'fieldset', HTMLFieldSetElement)
  prediction.querySelectorAll('label')[Number(dataOf(prediction, 'right'))]?.setAttribute('data-right', '')
  const own = ownPieces(element)
  const index = own.indexOf(prediction)
  const [before, after] = [own.slice(0, index), own.slice(index + 1)]
  const { state: answered } = read(dataOf(prediction, 'state'), library)
  const scenes: readonly [ClassScene, ClassScene] = [
    {
      state,
      to: state.at,
      ...shown,
      pieces: [...withCautionsOpened(before), fieldset],
      holders: [prediction, ...cautions],
    },
    {
      state: answered,
      to: answered.at,
      ...shown,
      pieces: [fieldset, ...ownPieces(answer, ', p:has(> .predict-right)'), ...withCautionsOpened(after)],
      holders: [prediction, answer, ...cautions],
    },
  ]
  return {
    ...step,
    scene: (revealed) => {
      answer.open = revealed
      prediction.toggleAttribute('data-revealed', revealed)
      for (const piece of own) piece.setAttribute('data-off', '')
      return scenes[revealed ? 1 : 0]
    },
  }
}
