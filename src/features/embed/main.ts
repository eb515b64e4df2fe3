import { required } from '../../browser/dom.ts'
import { readEmbedQuery } from '../../browser/embed-address.ts'

export { keepKeys } from './keep-keys.ts'

/** Has an embedded figure shown as its address’s query says, and gives in sentences what of that can’t be read. */
export const showAsAsked = (root: HTMLElement): readonly string[] => {
  const { scene, troubles } = readEmbedQuery(location.search)
  const { view, layers, subject, also } = scene
  // What the address says of the machine in three dimensions is all there is to say of it.
  if (view ?? layers ?? subject ?? also) {
    const drawing = required(root, '.drawing', HTMLElement)
    for (const [key, value] of Object.entries({ view, layers, subject, also }))
      if (value === undefined) delete drawing.dataset[key]
      else drawing.dataset[key] = value
    required(root, '.figure', HTMLElement).dataset.subject = subject ?? ''
  }
  return troubles
}
