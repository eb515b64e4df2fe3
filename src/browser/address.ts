import { read } from '../link/read.ts'
import type { Trouble } from '../link/troubles.ts'
import type { CardLibrary, State } from '../link/state.ts'
import { withoutView, withView } from '../link/scene-view.ts'
import { write } from '../link/write.ts'
import type { MachineStore } from './machine-store.ts'
import type { Store } from './store.ts'

/** How often at most the address is rewritten while the state changes, in ms. */
const pause = 400

/** The fragment for a state. An empty text is written as `v=1`, so that it is not taken for a page without a state. */
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
  const { state: text } = withoutView(location.hash.slice(1))
  if (text.includes('=')) return read(text, library)
  const isNone = text === '' || isPlace(text)
  return { state: read(home, library).state, troubles: isNone ? [] : read(text, library).troubles }
}

/** Takes a key out of the address's fragment, for what is no part of the state; null where it is not there. */
export const takeFromFragment = (name: string): string | null => {
  const text = location.hash.slice(1)
  const own = text.split('&').find((pair) => pair.startsWith(`${name}=`))
  if (own === undefined) return null
  const url = new URL(location.href)
  url.hash = text
    .split('&')
    .filter((pair) => pair !== own)
    .join('&')
  history.replaceState(history.state, '', url)
  return own.slice(name.length + 1)
}

/** Sets a name of the address's query, or takes it away where the value is null; the page and its history stay. */
export const setQuery = (name: string, value: string | null): void => {
  const url = new URL(location.href)
  if (value === null) url.searchParams.delete(name)
  else url.searchParams.set(name, value)
  history.replaceState(history.state, '', url)
}

/** What a page keeps in its address, and how to write it, to read it, and to hear of its changes. */
interface Kept {
  readonly subscribe: (listener: (now: unknown, before: unknown) => void) => void
  /** The fragment for what the page shows now. */
  readonly write: () => string
  /** Takes an edited fragment, without its `#`. Whether all of it could be read. */
  readonly read: (text: string) => boolean
  /** Whether all of the fragment with which the page was opened could be read; usually it could. */
  readonly isWhole?: boolean
}

/**
 * Keeps the address and a page the same: writes it at a change, and while changes go on only so often, as browsers allow;
 * reads it when it is edited. Who leaves by a link in between loses nothing. An address that could not be read whole is
 * left as it came until the page shows something else than was read: whoever gave it may be asked what it was.
 */
export const keepAddress = ({ subscribe, write, read, isWhole = true }: Kept): void => {
  let written = location.hash
  /** What would be written in place of an address that could not be read whole; null for any other. */
  let instead = isWhole ? null : write()
  let rest: ReturnType<typeof setTimeout> | undefined
  let isChanged = false
  const follow = (): void => {
    isChanged = false
    // Edited a moment ago: the edit is about to be read.
    if (location.hash !== written) return
    const text = write()
    if (text === instead) return
    instead = null
    history.replaceState(history.state, '', `#${text}`)
    written = location.hash
  }
  const keep = (): void => {
    rest = undefined
    if (!isChanged) return
    follow()
    rest = setTimeout(keep, pause)
  }
  subscribe((_, before) => {
    if (!before) return
    // Not before all who hear of this change have heard of it, but before anything else, a reload above all.
    if (rest === undefined && !isChanged) queueMicrotask(keep)
    isChanged = true
  })
  addEventListener('beforeunload', () => {
    if (isChanged) follow()
  })
  addEventListener('hashchange', () => {
    if (location.hash === written) return
    written = location.hash
    instead = read(written.slice(1)) ? null : write()
  })
}

/** From where the machine is seen, as a link's `view` says it: null from where the page shows it. Who changes it. */
export type SeenFrom = Store<string | null, 'hand' | 'link'>

/**
 * Keeps the address and the state the same, with from where the machine is seen, and says what of an edited address could not be read. `isWhole`:
 * whether all of the address with which the page was opened could be.
 */
export const followAddress = (
  { store, seenFrom }: { readonly store: MachineStore; readonly seenFrom: SeenFrom },
  home: string,
  isWhole: boolean,
  tell: (troubles: readonly Trouble[]) => void,
): void => {
  keepAddress({
    isWhole,
    subscribe: (listener) => {
      store.subscribe(listener)
      seenFrom.listen((now) => {
        listener(now, seenFrom)
      })
    },
    write: () => withView(fragmentOf(store.now().state, store.library), seenFrom.now()),
    read: (text) => {
      if (isPlace(text)) return true
      const { state, troubles } = addressed(home, store.library)
      store.set(state)
      seenFrom.set(withoutView(text).view, 'link')
      tell(troubles)
      return troubles.length === 0
    },
  })
}
