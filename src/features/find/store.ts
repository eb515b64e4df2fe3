import { createStore } from '../../browser/store.ts'
import type { SeenPass, Session } from '../../link/session.ts'
import type { CardLibrary } from '../../link/state.ts'

/** What the page shows: the session, and which of its passes is the current one. */
interface Now {
  readonly session: Session
  readonly at: number
}

/** The one place where the page's session lives. */
export interface FindStore {
  readonly library: CardLibrary
  readonly now: () => Now
  /** The current pass. */
  readonly pass: () => SeenPass
  readonly set: (change: Partial<Session>, at?: number) => void
  /** Changes the current pass; `isMore` goes on with the last step, as a drag does, so that one undo takes both back. */
  readonly setPass: (change: Partial<SeenPass>, isMore?: boolean) => void
  readonly undo: () => void
  readonly canUndo: () => boolean
  readonly subscribe: (listener: (now: Now, before: Now | null) => void) => void
}

const mostSteps = 200

/** A pass with a change: with another card, row or way it is another pass, whose number is to be found. */
const changed = (pass: SeenPass, change: Partial<SeenPass>): SeenPass => {
  const isOther = 'card' in change || 'row' in change || 'way' in change
  return { ...pass, ...(isOther ? { pass: null } : {}), ...change }
}

/** Makes a store that begins with this session; `settle` gives each session the beds that its machine makes. */
export const createFindStore = (
  first: Session,
  library: CardLibrary,
  settle: (session: Session) => Session,
): FindStore => {
  const past: Now[] = []
  const store = createStore<Now, 'hand'>({ session: settle(first), at: first.passes.length - 1 }, 'hand')
  const pass = (): SeenPass => {
    const { session, at } = store.now()
    const found = session.passes[at]
    if (!found) throw new Error('a session has no current pass')
    return found
  }
  const keep = (): void => {
    past.push(store.now())
    if (past.length > mostSteps) past.shift()
  }
  const set: FindStore['set'] = (change, at = store.now().at) => {
    const session = settle({ ...store.now().session, ...change })
    if (Object.keys(change).length > 0) keep()
    store.set({ session, at: Math.max(0, Math.min(at, session.passes.length - 1)) })
  }
  return {
    library,
    now: store.now,
    pass,
    set,
    setPass: (change, isMore = false) => {
      const { session, at } = store.now()
      const passes = session.passes.map((one, n) => (n === at ? changed(one, change) : one))
      if (!isMore) keep()
      store.set({ at, session: settle({ ...session, passes }) })
    },
    undo: () => {
      const before = past.pop()
      if (before) store.set(before)
    },
    canUndo: () => past.length > 0,
    subscribe: (listener) => {
      store.listen(listener)
      listener(store.now(), null)
    },
  }
}
