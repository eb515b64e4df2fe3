import { namesState } from '../../browser/names-state.ts'
import { required } from '../../browser/dom.ts'
import type { EmbedQuery } from '../../browser/embed-address.ts'

export { keepKeys } from './keep-keys.ts'

/** What the address's query asks for; what reads it is fetched only where there is one. */
const asked = async (): Promise<Pick<EmbedQuery, 'scene'> & { readonly troubles: readonly string[] }> => {
  if (location.search === '') return { scene: {}, troubles: [] }
  const { readEmbedQuery } = await import('../../browser/embed-address.ts')
  return readEmbedQuery(location.search)
}

/** Has an embedded figure shown as its address’s query says, and gives in sentences what of that can’t be read. */
export const showAsAsked = async (root: HTMLElement): Promise<readonly string[]> => {
  const { scene, troubles } = await asked()
  const { view, layers, subject, also, hand } = scene
  // The page opens with a step of a chapter: of an address that asks for something, nothing of that step is left.
  if (namesState() || (view ?? layers ?? subject ?? also ?? hand) !== undefined) {
    const drawing = required(root, '.drawing', HTMLElement)
    drawing.removeAttribute('data-built')
    for (const [key, value] of Object.entries({ view, layers, subject, also, hand }))
      if (value === undefined) drawing.removeAttribute(`data-${key}`)
      else drawing.setAttribute(`data-${key}`, value)
    required(root, '.figure', HTMLElement).dataset.subject = subject ?? ''
  }
  const isKept = document.documentElement.dataset.colours === 'kept'
  return isKept ? [...troubles, 'From files the colours can’t be chosen; they follow this page.'] : troubles
}
