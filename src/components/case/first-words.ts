import { readCase } from '../../link/case.ts'
import { scenarioOf } from '../../link/state.ts'
import { required } from '../machine/dom.ts'
import { libraryOf } from '../machine/library.ts'
import { showNotice, showWrong } from './found.ts'

/**
 * Runs before the page is drawn, so that the customer reads what is wrong at once; pictures and all else follow. While
 * a case is made the form stands first, and its room is all that is needed.
 */
const root = document.querySelector<HTMLElement>('.case')
const isMaking = new URLSearchParams(location.search).has('make')
root?.toggleAttribute('data-making', isMaking)
if (root && !isMaking) {
  const library = libraryOf(required(root, '.library', HTMLScriptElement).text)
  const found = readCase(location.hash, library)
  showNotice(root, found, false)
  showWrong(root, found, scenarioOf(found.state, library))
  root.setAttribute('data-worded', '')
}
