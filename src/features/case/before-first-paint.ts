import { readCase } from '../../link/case.ts'
import { scenarioOf } from '../../link/state.ts'
import { receiveTitle } from '../../browser/case-title.ts'
import { required } from '../../browser/dom.ts'
import { libraryOf } from '../../browser/library.ts'
import { showCloseUp } from './close-up.ts'
import { showNotice, showWrong, writeForm } from './write-text.ts'

/**
 * Runs before the page is drawn, so that the customer reads what is wrong and sees the broken part at once, and whoever
 * makes a case can write; all else follows.
 */
const root = document.querySelector<HTMLElement>('.case')
if (root) {
  const isMaking = new URLSearchParams(location.search).has('make')
  const title = isMaking ? receiveTitle() : ''
  if (title !== '') {
    const pair = new URLSearchParams({ title }).toString()
    history.replaceState(history.state, '', `${location.search}#${pair}&${location.hash.slice(1)}`)
  }
  const library = libraryOf(required(root, '.library', HTMLScriptElement).text)
  const found = readCase(location.hash, library)
  showNotice(root, found, isMaking)
  showWrong(root, found, scenarioOf(found.state, library))
  showCloseUp(root, found.state, library)
  writeForm(root, found)
  root.toggleAttribute('data-making', isMaking)
  root.setAttribute('data-worded', '')
}
