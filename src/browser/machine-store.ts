import { type CardLibrary, scenarioOf, type State } from '../link/state.ts'
import { type Frame, frameAt } from '../mechanism/frame.ts'
import { type Run, startRun } from '../mechanism/pass.ts'
import { createStore } from './store.ts'

/** The machine as it is on the page: its state, and what the model makes of it. */
export interface Moment {
  readonly state: State
  readonly run: Run
  readonly frame: Frame
}

/** Who changed the machine: a reader's hand, a chapter's step, an undone change, or another window of the class. */
export type ChangedBy = 'hand' | 'step' | 'undo' | 'class'

/** What is called with the machine as it is now and as it was before; `before` is null at the first call. */
type Listener = (moment: Moment, before: Moment | null, by: ChangedBy) => void

/** The one place where a page's state is kept. Whoever shows something subscribes; whoever changes something calls set. */
export interface MachineStore {
  readonly library: CardLibrary
  readonly now: () => Moment
  /** Changes some of the state. Whoever listens for others' changes only says who changes it. */
  readonly set: (change: Partial<State>, by?: ChangedBy) => void
  /** Calls the listener now, and at every change from now on. */
  readonly subscribe: (listener: Listener) => void
}

const sameScenario = (one: State, other: State): boolean =>
  one.card === other.card &&
  one.faults === other.faults &&
  one.speed === other.speed &&
  one.wear === other.wear &&
  one.seed === other.seed &&
  one.bed === other.bed &&
  one.columnOne === other.columnOne

const momentOf = (state: State, library: CardLibrary, before: Moment | null): Moment => {
  const run = before && sameScenario(before.state, state) ? before.run : startRun(scenarioOf(state, library))
  return { state, run, frame: frameAt(run, state.pass, state.at) }
}

/** Makes a store that begins in this state. The model is set up again only when more than the carriage changes. */
export const createMachineStore = (first: State, library: CardLibrary): MachineStore => {
  const moments = createStore<Moment, ChangedBy>(momentOf(first, library, null), 'hand')
  return {
    library,
    now: moments.now,
    set: (change, by) => {
      const before = moments.now()
      moments.set(momentOf({ ...before.state, ...change }, library, before), by)
    },
    subscribe: (listener) => {
      moments.listen(listener)
      listener(moments.now(), null, 'hand')
    },
  }
}
