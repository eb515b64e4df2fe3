import { atom } from 'nanostores'

/** What is called at a change: the value now, the one before it, and who changed it. */
type Listener<Value, By> = (now: Value, before: Value, by: By) => void

/** A value that a page keeps in one place, for all who show it or change it. `By` is the list of who changes it. */
export interface Store<Value, By> {
  readonly now: () => Value
  /** Changes the value; nobody is notified where it is the same as before. */
  readonly set: (next: Value, by?: By) => void
  /** Calls the listener at every change from now on; returns what ends that. */
  readonly listen: (listener: Listener<Value, By>) => () => void
}

/**
 * Makes a store that begins with this value; `usual` is who changes it where nobody is named. Listeners are called in the order in which they came. A change made by a
 * listener is there at once for `now`, and the others are notified of it after the change that caused it: so who made a
 * change goes with it as `by`, never in a variable that is set around the call.
 */
export const createStore = <Value, By>(
  first: Value,
  usual: By,
  isSame: (one: Value, other: Value) => boolean = Object.is,
): Store<Value, By> => {
  const $kept = atom<{ readonly value: Value; readonly by: By }>({ value: first, by: usual })
  return {
    now: () => $kept.get().value,
    set: (value, by = usual) => {
      if (!isSame($kept.get().value, value)) $kept.set({ value, by })
    },
    listen: (listener) =>
      $kept.listen((now, before) => {
        if (before) listener(now.value, before.value, now.by)
      }),
  }
}
