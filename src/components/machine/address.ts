import { read, type Trouble } from '../../link/read.ts'
import type { CardLibrary, State } from '../../link/state.ts'
import { write } from '../../link/write.ts'
import type { Store } from './store.ts'

/** How often at most the address is rewritten while the state changes, in ms. */
const pause = 400

/** The fragment for a state. An empty text stands as `v=1`, so that it is not taken for a page without a state. */
export const fragmentOf = (state: State, library: CardLibrary): string => {
  const text = write(state, library)
  return text === '' ? 'v=1' : text
}

/** Whether a fragment names a place of the page, as a link within it does. */
const isPlace = (text: string): boolean => document.getElementById(text) !== null

/** The state that the address names, or `home`, the page's own, where it names none; and what could not be read. */
export const addressed = (
  home: string,
  library: CardLibrary,
): { state: State; troubles: readonly Trouble[] } => {
  const text = location.hash.slice(1)
  if (text.includes('=')) return read(text, library)
  const isNone = text === '' || isPlace(text)
  return { state: read(home, library).state, troubles: isNone ? [] : read(text, library).troubles }
}

/**
 * Keeps the address and the state the same: writes it a little after each change, reads it when it is edited and then
 * tells what could not be read.
 */
export const followAddress = (
  store: Store,
  home: string,
  tell: (troubles: readonly Trouble[]) => void,
): void => {
  let written = location.hash
  let timer: ReturnType<typeof setTimeout> | undefined
  store.subscribe((_, before) => {
    if (!before) return
    timer ??= setTimeout(() => {
      timer = undefined
      // Edited a moment ago: the edit is about to be read.
      if (location.hash !== written) return
      history.replaceState(history.state, '', `#${fragmentOf(store.now().state, store.library)}`)
      written = location.hash
    }, pause)
  })
  addEventListener('hashchange', () => {
    if (location.hash === written) return
    written = location.hash
    if (isPlace(written.slice(1))) return
    const { state, troubles } = addressed(home, store.library)
    store.set(state)
    tell(troubles)
  })
}
