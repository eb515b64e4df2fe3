import { type CardLibrary, rowsOf, type State } from '../../link/state.ts'
import { exampleNeedle } from '../../find/battery.ts'
import type { Fault } from '../../mechanism/fault.ts'
import type { FaultKindName } from '../../mechanism/fault-kinds.ts'
import type { CasePicture } from '../../words/figures/fault-scene.ts'
import { faultPhrase } from '../../words/faults.ts'
import { fragmentOf } from '../../browser/address.ts'
import { dataOf, required, tell } from '../../browser/dom.ts'

/** The first fault of a case whose part is drawn in three dimensions, and the picture of its kind. */
interface Place {
  readonly fault: Fault
  readonly picture: CasePicture
}

/** The place of what is broken; null where nothing is that is drawn, or only a card that is not there. */
const placeOf = (root: HTMLElement, state: State, library: CardLibrary): Place | null => {
  const pictures = JSON.parse(required(root, '.fault-pictures', HTMLScriptElement).text) as Partial<
    Record<FaultKindName, CasePicture>
  >
  const hasCard = rowsOf(state.card, library) !== null
  for (const fault of state.faults) {
    const picture = pictures[fault.kind]
    if (picture && (hasCard || !fault.kind.startsWith('card.'))) return { fault, picture }
  }
  return null
}

/** Leads to the page of the parts with a state, from where a view sees it. */
export const showTurned = (root: HTMLElement, state: State, view: string, library: CardLibrary): void => {
  const text = fragmentOf({ ...state, note: '' }, library)
  for (const link of root.querySelectorAll<HTMLAnchorElement>('.case-turn'))
    link.href = `${dataOf(root, 'base')}/parts/#${text}&view=${view}`
}

/**
 * Shows the machine at the first broken part that is drawn, as the picture of its kind, or the whole of it where none is;
 * and says where it can be turned. On a screen the drawing of the whole with what is wrong ringed is there only where several
 * things are. Gives the caption; null where the whole is shown.
 */
export const showPlace = (root: HTMLElement, state: State, library: CardLibrary): string | null => {
  const place = placeOf(root, state, library)
  required(root, '.case-broken', HTMLElement).hidden = place === null
  required(root, '.case-whole', HTMLElement).hidden = place !== null
  const isMap = state.faults.length > (place ? 1 : 0)
  required(root, '.case-machine', HTMLElement).dataset['on'] = isMap ? 'all' : 'paper'
  showTurned(root, { ...state, at: exampleNeedle }, place?.picture.view ?? 'whole', library)
  if (!place) return null
  const { fault, picture } = place
  const phrase = faultPhrase(fault)
  const number = state.faults.length > 1 ? `Number ${state.faults.indexOf(fault) + 1}: ` : ''
  const caption = `${number}${phrase}. ${picture.seen}`
  tell(required(root, '.case-broken-words', HTMLElement), caption)
  const drawn = picture.example === phrase ? '' : `An example is drawn: ${picture.example}.`
  const said = required(root, '.case-drawn', HTMLElement)
  said.removeAttribute('data-past')
  tell(said, drawn)
  for (const svg of root.querySelectorAll('.case-broken-picture')) {
    svg.setAttribute('aria-label', `${caption} ${drawn}`.trim())
    for (const old of svg.querySelectorAll('.case-room > g, .case-labels > *')) old.remove()
    required(svg, 'image', SVGImageElement).setAttribute('href', picture.address)
  }
  return caption
}

/** What a reader does that has the exact part drawn in the place of its kind's picture. */
const doings = ['pointermove', 'pointerdown', 'keydown', 'scroll'] as const

/** Calls back once, when a reader first does anything on the page. */
export const onFirstDoing = (act: () => void): void => {
  const once = (): void => {
    for (const doing of doings) removeEventListener(doing, once)
    act()
  }
  for (const doing of doings) addEventListener(doing, once, { passive: true })
}
