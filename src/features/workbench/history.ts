import { withinPass } from '../../mechanism/bed.ts'
import type { State } from '../../link/state.ts'
import type { MachineStore } from '../../browser/machine-store.ts'

/** The changes of a page's state, to be undone and done again. */
export interface History {
  readonly undo: () => void
  readonly redo: () => void
}

/** How many steps back are kept. */
const most = 200

/** What a person sets; the place of the carriage is no change of the machine. */
const isSame = (one: State, other: State): boolean =>
  one.card === other.card &&
  one.faults === other.faults &&
  one.speed === other.speed &&
  one.wear === other.wear &&
  one.seed === other.seed &&
  one.bed === other.bed &&
  one.columnOne === other.columnOne &&
  one.note === other.note

/** An earlier machine, with the carriage where it is now, as far as its needles in use allow. */
const withCarriage = (state: State, { pass, at }: State): State => ({
  ...state,
  pass,
  at: withinPass(at, pass, state.bed),
})

/**
 * Remembers every change of the machine, but not the carriage's way. All that one press of a pointer or a key changes
 * is one step: a slider dragged, a line of holes punched.
 */
export const createHistory = (
  store: MachineStore,
  show: (canUndo: boolean, canRedo: boolean) => void,
): History => {
  const past: State[] = []
  const future: State[] = []
  let gesture = 0
  let lastGesture = -1

  const begin = (event: Event): void => {
    if (!(event instanceof KeyboardEvent && event.repeat)) gesture++
  }
  for (const kind of ['pointerdown', 'keydown', 'hashchange'])
    addEventListener(kind, begin, { capture: true })

  store.subscribe(({ state }, before, by) => {
    if (!before || by === 'undo' || isSame(state, before.state)) return
    if (gesture !== lastGesture) past.push(before.state)
    if (past.length > most) past.shift()
    lastGesture = gesture
    future.length = 0
    show(past.length > 0, false)
  })
  const step = (from: State[], to: State[]): void => {
    const state = from.pop()
    if (!state) return
    const now = store.now().state
    to.push(now)
    store.set(withCarriage(state, now), 'undo')
    lastGesture = -1
    show(past.length > 0, future.length > 0)
  }
  return {
    undo: () => {
      step(past, future)
    },
    redo: () => {
      step(future, past)
    },
  }
}
