import { read } from '../../link/read.ts'
import { fragmentOf } from '../machine/address.ts'
import type { Machine } from '../machine/main.ts'
import type { ClassStore } from './state.ts'
import type { Travel } from './travel.ts'

/** The machine's state as the text of a link. */
export const linkOf = ({ store }: Machine): string => fragmentOf(store.now().state, store.library)

/** Tells the class's store of each change of the machine; gives what sets the machine to a link from elsewhere. */
export const tieLink = (machine: Machine, store: ClassStore, travel: Travel): ((link: string) => void) => {
  let isTaking = false
  machine.store.subscribe((_, before) => {
    if (before && !isTaking) store.set({ link: linkOf(machine) }, 'here')
  })
  return (link) => {
    isTaking = true
    travel.follow(read(link, machine.store.library).state)
    isTaking = false
  }
}
