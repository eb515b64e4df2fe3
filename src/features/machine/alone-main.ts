import { addressed, followAddress, takeFromFragment } from '../../browser/address.ts'
import { dataOf, required } from '../../browser/dom.ts'
import { libraryOf } from '../../browser/library.ts'
import { createMachineStore } from '../../browser/machine-store.ts'
import type { Trouble } from '../../link/troubles.ts'
import { bindNote, bindWords, say, sayToo } from './caption.ts'
import { bindSlider } from './carriage-slider.ts'
import { dragInChain } from './drag-in-chain.ts'
import { dragInFigures } from './drag-in-figures.ts'
import { createFigureView } from './figure-view.ts'
import { followView } from './follow-view.ts'

/**
 * Brings one figure to life with its slider and its sentence, and nothing else: in the state that the address names.
 * `troubles` are sentences on what else of the address could not be read. Keeps nothing in the browser.
 */
export const startAlone = (root: HTMLElement, troubles: readonly string[]): void => {
  const seenFrom = takeFromFragment('view')
  const library = libraryOf(required(root, '.library', HTMLScriptElement).text)
  const home = dataOf(root, 'state')
  const first = addressed(home, library)
  const store = createMachineStore(first.state, library)
  const stage = createFigureView(required(root, '.figure', HTMLElement), store)
  bindWords(root, store)
  bindNote(root, store)
  bindSlider(root, store)
  dragInChain(stage, store)
  dragInFigures(stage, store)
  const tell = (some: readonly Trouble[]): void => {
    say(root, some.map(({ sentence }) => sentence).join(' '))
  }
  tell(first.troubles)
  for (const trouble of troubles) sayToo(root, trouble)
  followView(root, stage, seenFrom)
  followAddress({ store, seenFrom: stage.seenFrom }, home, first.troubles.length === 0, tell)
  root.setAttribute('data-live', '')
}
