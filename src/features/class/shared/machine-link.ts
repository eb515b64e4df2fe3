import { fragmentOf } from '../../../browser/address.ts'
import type { MachineStore } from '../../../browser/machine-store.ts'
import { read } from '../../../link/read.ts'
import type { State } from '../../../link/state.ts'
import { write } from '../../../link/write.ts'
import { needleIndex, needleName } from '../../../mechanism/bed.ts'
import type { Machine } from '../../machine/index.ts'
import type { ClassStore } from './state.ts'

/** Keeps where column 1 is on the class's machine the same in this window and in the class's store. */
export const bindOwnPlace = ({ ownPlace }: Machine, store: ClassStore): void => {
  ownPlace.listen(({ columnOne }) => {
    store.set({ first: needleName(columnOne) }, 'local')
  })
  store.subscribe(({ first }) => {
    const columnOne = needleIndex(first)
    if (columnOne !== null) ownPlace.set({ columnOne })
  })
}

/** The machine's state as the text of a link. */
export const machineLink = ({ store }: Machine): string => fragmentOf(store.now().state, store.library)

/** Whether two states differ by no more than where the carriage is. */
export const isSameButForCarriage = (one: State, other: State, { library }: MachineStore): boolean =>
  write({ ...one, pass: other.pass, at: other.at }, library) === write(other, library)

/** Sets a machine to another window's state. Where only the carriage has moved, nothing else is recomputed. */
export const setMachine = (store: MachineStore, target: State): void => {
  const { pass, at } = target
  store.set(isSameButForCarriage(target, store.now().state, store) ? { pass, at } : target, 'class')
}

/**
 * Writes each change made on the machine here to the class's store. Returns a function that sets the machine, by
 * `follow`, to the link of the class's store, or where that is empty to `own`, the state of the step or question.
 */
export const bindMachine = (
  machine: Machine,
  store: ClassStore,
  follow: (target: State) => void,
): ((own: State) => void) => {
  machine.store.subscribe((_, before, by) => {
    if (before && by !== 'class') store.set({ link: machineLink(machine) }, 'local')
  })
  return (own) => {
    const { link } = store.state()
    follow(link === '' ? own : read(link, machine.store.library).state)
  }
}
