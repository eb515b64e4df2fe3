import { read } from '../../link/read.ts'
import type { State } from '../../link/state.ts'
import { write } from '../../link/write.ts'
import { linkOf } from '../class/link.ts'
import type { ClassStore } from '../class/state.ts'
import type { Machine } from '../machine/main.ts'

/** Keeps a window's machine and what its class is told of it the same. */
export interface Mirror {
  /** Sets the machine to what the class sees; `own` is the state of what is shown, for a class that has not moved on. */
  readonly follow: (own: State) => void
}

export const createMirror = (machine: Machine, store: ClassStore): Mirror => {
  const { store: its } = machine
  let isFollowing = false
  its.subscribe((_, before) => {
    if (before && !isFollowing) store.set({ link: linkOf(machine) }, 'here')
  })
  return {
    follow: (own) => {
      const text = store.state().link
      const target = text === '' ? own : read(text, its.library).state
      const { state } = its.now()
      const { pass, at } = target
      const isCarriageOnly =
        write({ ...target, pass, at }, its.library) === write({ ...state, pass, at }, its.library)
      isFollowing = true
      // A change that leaves all else as it is does not work the whole machine out anew.
      its.set(isCarriageOnly ? { pass, at } : target)
      isFollowing = false
    },
  }
}
