import { contradict } from '../mechanism/fault-list.ts'
import { wideChances } from './chances.ts'
import type { WideCause } from './wide-causes.ts'

/** Some of what reaches the whole bed, at once; none for a bed that is right. */
export interface WideState {
  readonly causes: readonly WideCause[]
  readonly chance: number
}

export const rightBed: WideState = { causes: [], chance: wideChances.nothing }

/** One thing by itself. */
export const alone = (one: WideCause): WideState => ({ causes: [one], chance: one.chance })

const isTurn = ({ causes }: WideCause): boolean => /^pawl\.(skips|jumps)\./.test(causes[0] ?? '')

/**
 * A state with one thing more, at its chance; another turn after a first has the chance of a next turn. Null where the
 * two exclude one another.
 */
export const withCause = (state: WideState, more: WideCause): WideState | null => {
  if (state.causes.includes(more)) return null
  for (const { fault, causes } of state.causes) {
    if (fault && more.fault && contradict(fault, more.fault)) return null
    if (causes[0] === 'card.out' && more.place === 'card') return null
    if (more.causes[0] === 'card.out' && state.causes.some(({ place }) => place === 'card')) return null
  }
  const isNext = isTurn(more) && state.causes.some(isTurn)
  const before = state.causes.length === 0 ? 1 : state.chance
  return { causes: [...state.causes, more], chance: before * (isNext ? wideChances.nextTurn : more.chance) }
}
