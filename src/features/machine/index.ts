/** What other features use of the machine on a page. */
export { comeAlive, startMachine, type Machine } from './main.ts'
export { say, sayToo } from './caption.ts'
export { showOwnPlace } from './own-place.ts'
export { faultsOnCard } from './card-faults.ts'
export { followStateLink, showState, stateLinkOf } from './state-links.ts'
export { followView } from './follow-view.ts'
export type { FigureView } from './figure-view.ts'
