import { type CardLibrary, rowsOf, type State } from '../../link/state.ts'
import type { Fault } from '../../mechanism/fault.ts'
import type { FaultKindName } from '../../mechanism/fault-kinds.ts'
import type { CasePicture } from '../../words/figures/fault-scene.ts'
import { faultPhrase } from '../../words/faults.ts'
import { dataOf, required, setText } from '../../browser/dom.ts'

/** The first fault of a state that has a picture; null where none has, or only faults of a card that is not there. */
export const firstPictured = (
  state: State,
  library: CardLibrary,
  has: (kind: FaultKindName) => boolean,
): Fault | null => {
  const hasCard = rowsOf(state.card, library) !== null
  return state.faults.find(({ kind }) => has(kind) && (hasCard || !kind.startsWith('card.'))) ?? null
}

/** The fault whose part is shown close to, the caption of its picture, and the view of the parts in which it is seen. */
export interface CloseUp {
  readonly fault: Fault
  readonly caption: string
  readonly view: string
}

/**
 * Shows the machine at the first broken part that is drawn, as the picture of its kind, or the whole of it where none is.
 * On a screen the drawing of the whole with what is wrong ringed is there only where several things are. Gives what is shown
 * close to; null where the whole is shown.
 */
export const showCloseUp = (root: HTMLElement, state: State, library: CardLibrary): CloseUp | null => {
  const pictures = JSON.parse(required(root, '.fault-pictures', HTMLScriptElement).text) as Partial<
    Record<FaultKindName, CasePicture>
  >
  const fault = firstPictured(state, library, (kind) => pictures[kind] !== undefined)
  const picture = fault && pictures[fault.kind]
  required(root, '.case-broken', HTMLElement).hidden = !picture
  const whole = required(root, '.case-whole', HTMLElement)
  whole.hidden = Boolean(picture)
  // Fetched where it is seen.
  if (!picture)
    for (const image of whole.querySelectorAll('image')) image.setAttribute('href', dataOf(whole, 'picture'))
  const isMap = state.faults.length > (picture ? 1 : 0)
  required(root, '.case-machine', HTMLElement).dataset['on'] = isMap ? 'all' : 'paper'
  if (!fault || !picture) return null
  const phrase = faultPhrase(fault)
  const number = state.faults.length > 1 ? `Number ${state.faults.indexOf(fault) + 1}: ` : ''
  const caption = `${number}${phrase}. ${picture.seen}`
  setText(required(root, '.case-broken-words', HTMLElement), caption)
  const drawn = picture.example === phrase ? '' : `An example is drawn: ${picture.example}.`
  const said = required(root, '.case-drawn', HTMLElement)
  said.removeAttribute('data-past')
  setText(said, drawn)
  for (const svg of root.querySelectorAll('.case-broken-picture')) {
    svg.setAttribute('aria-label', `${caption} ${drawn}`.trim())
    for (const old of svg.querySelectorAll('.case-room > g, .case-labels > *')) old.remove()
    required(svg, 'image', SVGImageElement).setAttribute('href', picture.address)
  }
  return { fault, caption, view: picture.view }
}

/** What a reader does that has all drawn which a first look does without. */
const actions = ['pointermove', 'pointerdown', 'keydown', 'scroll', 'resize'] as const

/** Calls back once, when a reader first does anything on the page. */
export const onFirstAction = (act: () => void): void => {
  const once = (): void => {
    for (const action of actions) removeEventListener(action, once)
    act()
  }
  for (const action of actions) addEventListener(action, once, { passive: true })
}
