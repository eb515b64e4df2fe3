import { dataOf, required, setText } from '../../browser/dom.ts'
import { libraryOf } from '../../browser/library.ts'
import { prefersReducedMotion } from '../../browser/tween.ts'
import { read } from '../../link/read.ts'
import { scenarioOf } from '../../link/state.ts'
import { startRun } from '../../mechanism/pass.ts'
import { mendedAfter } from '../../mechanism/mended.ts'
import type { Knitter } from './knitter.ts'
import { bindSaving } from './save-figure.ts'
import { showLinkedState } from './show-linked-state.ts'

/** How many passes the machine makes with the fault in sight, and how many once it is mended. */
const passesBroken = 1
const passesMended = 12

/** Brings the home page to life: the machine knits a row with its fault, and once it is mended the next rows come whole. */
export const startHome = (): void => {
  const root = required(document, '.home', HTMLElement)
  const library = libraryOf(required(document, '.library', HTMLScriptElement).text)
  const { state } = read(dataOf(root, 'state'), library)
  const broken = startRun(scenarioOf(state, library))
  const last = state.pass + passesBroken
  const mended = mendedAfter(broken, startRun(scenarioOf({ ...state, faults: [] }, library)), last)
  const button = required(root, '.home-mend', HTMLButtonElement)

  // What draws the picture comes when something in it moves.
  let knitter: Promise<Knitter> | null = null
  const knitting = (): Promise<Knitter> =>
    (knitter ??= import('./knitter.ts').then(({ createKnitter }) =>
      createKnitter(root, { run: broken, pass: state.pass, x: state.at }),
    ))
  const knit = async (isMended: boolean, isAtOnce = false): Promise<void> => {
    const { knit: rows, show } = await knitting()
    if (isMended) rows(mended, last + 1, last + passesMended)
    else if (isAtOnce) show(broken, last)
    else rows(broken, last, last)
  }
  button.addEventListener('click', () => {
    const isMended = root.toggleAttribute('data-mended')
    setText(button, isMended ? 'Break it again' : 'Mend it')
    void knit(isMended, true)
  })
  bindSaving(root)
  addEventListener('hashchange', showLinkedState)
  root.setAttribute('data-live', '')
  const isSeen = !document.documentElement.hasAttribute('data-sent')
  if (isSeen && !prefersReducedMotion()) void knit(false)
}
