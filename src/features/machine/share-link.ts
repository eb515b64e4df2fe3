import { fragmentOf, type SeenFrom } from '../../browser/address.ts'
import { copyLink } from '../../browser/share.ts'
import { required } from '../../browser/dom.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import { withView } from '../../link/scene-view.ts'
import { say } from './caption.ts'

/** The button that copies a link to what is shown, and the links to other pages that take it along. */
export const bindLink = (root: HTMLElement, store: MachineStore, seenFrom: SeenFrom): void => {
  const shown = required(root, '.link-text', HTMLInputElement)
  const notice = required(root, '.notice', HTMLElement)
  let said = ''
  const report = (words: string): void => {
    said = words
    say(root, words)
  }
  required(root, '.copy', HTMLButtonElement).addEventListener('click', () => {
    const url = new URL(location.href)
    url.hash = withView(fragmentOf(store.now().state, store.library), seenFrom.now())
    copyLink(shown, url.href, 'The link to exactly this state is copied.', report)
  })
  // Links that take the state along. Their address is only wanted when somebody goes there.
  for (const link of root.querySelectorAll<HTMLAnchorElement>('a.carry'))
    for (const kind of ['pointerdown', 'focus', 'click'] as const)
      link.addEventListener(kind, () => {
        link.hash = fragmentOf(store.now().state, store.library)
      })
  store.subscribe(() => {
    // Every set of `hidden` makes the browser recompute the styles that depend on it.
    if (!shown.hidden) shown.hidden = true
    // It was true of the state before.
    if (said !== '' && notice.textContent === said) report('')
  })
}
