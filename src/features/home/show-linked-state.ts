import { namesState } from '../../browser/names-state.ts'

/** Shows the machine in place of the fabric where the address names a state of it, with its controls at hand. */
export const showLinkedState = (): void => {
  if (!namesState()) return
  document.documentElement.setAttribute('data-sent', '')
  for (const fold of document.querySelectorAll('.controls-fold')) fold.setAttribute('open', '')
}
