import type { Trouble } from '../../link/troubles.ts'
import { emptySession, readSession, type SessionReading, writeSession } from '../../link/session.ts'
import type { CardLibrary } from '../../link/state.ts'
import type { FindStore } from './store.ts'

/** How often at most the address is rewritten while the session changes, in ms. */
const pause = 400

/** The session that the address names; an empty one where it names none or only a place of the page. */
export const addressedSession = (library: CardLibrary): SessionReading =>
  location.hash.includes('=')
    ? readSession(location.hash, library)
    : { session: emptySession(library), troubles: [] }

/** Keeps the address and the session the same, and tells what of an edited address could not be read. */
export const followSession = (store: FindStore, tell: (troubles: readonly Trouble[]) => void): void => {
  let written = location.hash
  let timer: ReturnType<typeof setTimeout> | undefined
  store.subscribe((_, before) => {
    if (!before) return
    timer ??= setTimeout(() => {
      timer = undefined
      // Edited a moment ago: the edit is about to be read.
      if (location.hash !== written) return
      history.replaceState(history.state, '', `#${writeSession(store.now().session, store.library)}`)
      written = location.hash
    }, pause)
  })
  addEventListener('hashchange', () => {
    if (location.hash === written) return
    written = location.hash
    if (!written.includes('=')) return
    const { session, troubles } = readSession(written, store.library)
    store.set(session, session.passes.length - 1)
    tell(troubles)
  })
}
