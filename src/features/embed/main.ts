import { namesState } from '../../browser/address.ts'
import { required } from '../../browser/dom.ts'
import { readEmbedQuery } from '../../browser/embed-address.ts'

export { keepKeys } from './keep-keys.ts'

/** Has an embedded figure shown as its address’s query says, and gives in sentences what of that can’t be read. */
export const showAsAsked = (root: HTMLElement): readonly string[] => {
  const { scene, troubles } = readEmbedQuery(location.search)
  const { view, layers, subject, also } = scene
  // The page opens with a step of a chapter: of an address that asks for something, nothing of that step is left.
  if (namesState() || (view ?? layers ?? subject ?? also) !== undefined) {
    const drawing = required(root, '.drawing', HTMLElement)
    drawing.removeAttribute('data-built')
    for (const [key, value] of Object.entries({ view, layers, subject, also }))
      if (value === undefined) drawing.removeAttribute(`data-${key}`)
      else drawing.setAttribute(`data-${key}`, value)
    required(root, '.figure', HTMLElement).dataset.subject = subject ?? ''
  }
  const isKept = document.documentElement.dataset.colours === 'kept'
  return isKept ? [...troubles, 'From files the colours can’t be chosen; they follow this page.'] : troubles
}
