import { read } from '../../link/read.ts'
import type { State } from '../../link/state.ts'
import { write } from '../../link/write.ts'
import { fragmentOf } from '../../browser/address.ts'
import type { Machine } from '../machine/main.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import type { ClassStore } from './state.ts'

/** The machine's state as the text of a link. */
export const linkOf = ({ store }: Machine): string => fragmentOf(store.now().state, store.library)

/** Whether two states differ by no more than where the carriage is. */
export const isSameMachine = (one: State, other: State, { library }: MachineStore): boolean =>
  write({ ...one, pass: other.pass, at: other.at }, library) === write(other, library)

/** Sets a machine to a state from elsewhere. Where only the carriage has moved, the rest is not worked out anew. */
export const takeOver = (store: MachineStore, target: State): void => {
  const { pass, at } = target
  store.set(isSameMachine(target, store.now().state, store) ? { pass, at } : target, 'class')
}

/**
 * Tells the class's store of each change of the machine made here. Gives what sets the machine, by `follow`, to the link
 * of the class's store, or to `own`, the state of what is shown, where the class has not moved on from that.
 */
export const tieLink = (
  machine: Machine,
  store: ClassStore,
  follow: (target: State) => void,
): ((own: State) => void) => {
  machine.store.subscribe((_, before, by) => {
    if (before && by !== 'class') store.set({ link: linkOf(machine) }, 'here')
  })
  return (own) => {
    const { link } = store.state()
    follow(link === '' ? own : read(link, machine.store.library).state)
  }
}
