/** Whether a fragment names a state of the machine; which needle is column 1 alone says only whose machine it is. */
const isState = (fragment: string): boolean =>
  [...new URLSearchParams(fragment.replace(/^#/, ''))].some(([key, value]) => key !== 'first' && value !== '')

/** Shows the machine in place of the fabric where the address names a state of it, with its controls at hand. */
export const showLinkedState = (): void => {
  if (!isState(location.hash)) return
  document.documentElement.setAttribute('data-sent', '')
  for (const fold of document.querySelectorAll('.controls-fold')) fold.setAttribute('open', '')
}
