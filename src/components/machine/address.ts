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

/** The state that the address names, read over `home`, the page's own; and what could not be read. */
export const addressed = (
  home: string,
  library: CardLibrary,
): { state: State; troubles: readonly Trouble[] } => {
  const text = location.hash.slice(1)
  return read(text.includes('=') ? text : home, library)
}

/** Keeps the address and the state the same: writes it a little after each change, reads it when it is edited. */
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
      written = `#${fragmentOf(store.now().state, store.library)}`
      history.replaceState(history.state, '', written)
    }, pause)
  })
  addEventListener('hashchange', () => {
    if (location.hash === written) return
    written = location.hash
    const { state, troubles } = addressed(home, store.library)
    store.set(state)
    tell(troubles)
  })
}
