import { readCarriagePosition } from '../../link/carriage-position.ts'
import { read } from '../../link/read.ts'
import type { CardLibrary, State } from '../../link/state.ts'
import { required } from '../../browser/dom.ts'

/** What a class sees at once: its state on the machine, in which figure, and the pieces of its text. */
export interface Scene {
  readonly state: State
  /** Where the carriage goes from there; the state's own place where it stands. */
  readonly to: number
  readonly figure: string
  readonly pieces: readonly HTMLElement[]
  /** Elements that hold pieces, and nothing else to be seen. */
  readonly holders: readonly HTMLElement[]
}

/** A step of the chapter, as the page's text has it. */
export interface ClassStep {
  readonly id: string
  readonly title: string
  readonly element: HTMLElement
  readonly asks: boolean
  /** What is seen of it, before its answer is shown or with it. */
  readonly scene: (revealed: boolean) => Scene
}

/** What of an element's children is text of its own. */
const ownPieces = (element: Element, but = ''): HTMLElement[] =>
  [...element.children].filter(
    (child): child is HTMLElement =>
      child instanceof HTMLElement && !child.matches(`h2, h3, noscript, summary${but}`),
  )

/** Pieces with the paragraphs of cautions in the cautions' place: a long one goes on under its heading. */
const opened = (pieces: readonly HTMLElement[]): HTMLElement[] =>
  pieces.flatMap((piece) => (piece.matches('.caution') ? ownPieces(piece) : [piece]))

const cautionsOf = (element: Element): HTMLElement[] => [...element.querySelectorAll<HTMLElement>('.caution')]

/** Reads a step from its element. */
export const classStep = (element: HTMLElement, library: CardLibrary): ClassStep => {
  const { state } = read(element.dataset.state ?? '', library)
  const figure = element.dataset.figure ?? ''
  const to = readCarriagePosition(element.dataset.to ?? '') ?? state.at
  const form = element.querySelector<HTMLFormElement>('.predict')
  const step = {
    id: element.id,
    title: element.querySelector('h2')?.textContent ?? '',
    element,
    asks: form !== null,
  }
  const cautions = cautionsOf(element)
  if (!form) {
    const scene = { state, to, figure, pieces: opened(ownPieces(element)), holders: cautions }
    return { ...step, scene: () => scene }
  }
  const answer = required(form, '.predict-answer', HTMLDetailsElement)
  const ask = required(form, 'fieldset', HTMLFieldSetElement)
  form.querySelectorAll('label')[Number(form.dataset.right)]?.setAttribute('data-right', '')
  const own = ownPieces(element)
  const place = own.indexOf(form)
  const [before, after] = [own.slice(0, place), own.slice(place + 1)]
  const { state: answered } = read(form.dataset.state ?? '', library)
  const scenes: readonly [Scene, Scene] = [
    { state, to: state.at, figure, pieces: [...opened(before), ask], holders: [form, ...cautions] },
    {
      state: answered,
      to: answered.at,
      figure,
      pieces: [ask, ...ownPieces(answer, ', p:has(> .predict-right)'), ...opened(after)],
      holders: [form, answer, ...cautions],
    },
  ]
  return {
    ...step,
    scene: (revealed) => {
      answer.open = revealed
      form.toggleAttribute('data-revealed', revealed)
      for (const piece of own) piece.setAttribute('data-off', '')
      return scenes[revealed ? 1 : 0]
    },
  }
}
