import { readForPlace } from '../../link/reader-place.ts'
import type { Machine } from './main.ts'

/** Shows the state of a link's text, and the figure that is named with it: what a text or a question speaks of. */
export const showState = (
  { player, stage, store, ownPlace }: Machine,
  text: string,
  figure?: string,
): void => {
  player.stop()
  if (figure) stage.show(figure)
  store.set(readForPlace(text, store.library, ownPlace.now()))
}

/** The link of a text to a state that was pressed, if it was one. */
export const stateLinkOf = (target: EventTarget | null): HTMLElement | null =>
  target instanceof Element ? target.closest<HTMLElement>('[data-go]') : null

/** Follows a text's link to a state. */
export const followStateLink = (machine: Machine, { dataset }: HTMLElement): void => {
  showState(machine, dataset.go ?? '', dataset.goFigure)
}
