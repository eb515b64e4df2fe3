import { type CardLibrary, scenarioOf, type State } from '../link/state.ts'
import { type Frame, frameAt } from '../mechanism/frame.ts'
import { type Run, startRun } from '../mechanism/pass.ts'

/** The machine as it is on the page: its state, and what the model makes of it. */
export interface Moment {
  readonly state: State
  readonly run: Run
  readonly frame: Frame
}

/** The one place where a page's state lives. Whoever shows something subscribes; whoever changes something calls set. */
export interface Store {
  readonly library: CardLibrary
  readonly now: () => Moment
  readonly set: (change: Partial<State>) => void
  readonly subscribe: (listener: (moment: Moment, before: Moment | null) => void) => void
}

const sameScenario = (one: State, other: State): boolean =>
  one.card === other.card &&
  one.faults === other.faults &&
  one.speed === other.speed &&
  one.wear === other.wear &&
  one.seed === other.seed &&
  one.bed === other.bed

/** Makes a store that begins in this state. The model is set up anew only when more than the carriage changes. */
export const createStore = (first: State, library: CardLibrary): Store => {
  const listeners: ((moment: Moment, before: Moment | null) => void)[] = []
  const moment = (state: State, before: Moment | null): Moment => {
    const run =
      before && sameScenario(before.state, state) ? before.run : startRun(scenarioOf(state, library))
    return { state, run, frame: frameAt(run, state.pass, state.at) }
  }
  let current = moment(first, null)
  return {
    library,
    now: () => current,
    set: (change) => {
      const before = current
      current = moment({ ...before.state, ...change }, before)
      for (const listener of listeners) listener(current, before)
    },
    subscribe: (listener) => {
      listeners.push(listener)
      listener(current, null)
    },
  }
}
