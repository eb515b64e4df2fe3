import type { CardLibrary, State } from '../../link/state.ts'
import { fragmentOf } from '../../browser/address.ts'
import { dataOf } from '../../browser/dom.ts'

/** Leads to the page of the parts with a state, from where a view sees it. */
export const showTurned = (root: HTMLElement, state: State, view: string, library: CardLibrary): void => {
  const text = fragmentOf({ ...state, note: '' }, library)
  for (const link of root.querySelectorAll<HTMLAnchorElement>('.case-turn'))
    link.href = `${dataOf(root, 'base')}/parts/#${text}&view=${view}`
}
