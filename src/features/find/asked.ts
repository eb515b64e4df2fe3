import { type View, viewsOf } from '../../find/view.ts'
import { type Fault, faultId } from '../../mechanism/fault.ts'
import { faultKinds } from '../../mechanism/fault-kinds.ts'
import type { AskedPass } from './messages.ts'

/** The views of passes with several cards: those in a row with one card follow one another, as on the machine. */
export const viewsAsked = (passes: readonly AskedPass[]): View[] => {
  const runs: AskedPass[][] = []
  for (const pass of passes) {
    const run = runs.at(-1)
    const isSame = run?.[0]?.card === pass.card || run?.[0]?.card?.join() === pass.card?.join()
    if (run && isSame) run.push(pass)
    else runs.push([pass])
  }
  return runs.flatMap((run) => {
    const [first] = run
    const views = viewsOf(first?.card ?? null, run)
    return first?.isOwn ? views : views.map((view) => ({ ...view, shift: null }))
  })
}

/** A fault with its kind's usual amount: a look at a part doesn't tell how much. */
export const withoutAmount = (fault: Fault): string =>
  faultId({ ...fault, amount: faultKinds[fault.kind].amount?.usual ?? null })
