import type { Trouble } from '../../link/troubles.ts'
import { emptySession, readSession, type SessionReading, writeSession } from '../../link/session-link.ts'
import type { CardLibrary } from '../../link/state.ts'
import { keepAddress } from '../../browser/address.ts'
import type { FindStore } from './store.ts'

/** The session that the address names; an empty one where it names none or only a place of the page. */
export const addressedSession = (library: CardLibrary): SessionReading =>
  location.hash.includes('=')
    ? readSession(location.hash, library)
    : { session: emptySession(library), troubles: [] }

/** Keeps the address and the session the same, and says what of an edited address could not be read. */
export const followSession = (store: FindStore, tell: (troubles: readonly Trouble[]) => void): void => {
  keepAddress({
    subscribe: store.subscribe,
    write: () => writeSession(store.now().session, store.library),
    read: (text) => {
      if (!text.includes('=')) return true
      const { session, troubles } = readSession(text, store.library)
      store.set(session, session.passes.length - 1)
      tell(troubles)
      return troubles.length === 0
    },
  })
}
