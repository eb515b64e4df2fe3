import { type ChanceLikeness, type Tried, triedByChance } from '../find/chance-likeness.ts'
import type { FaultKindName } from '../mechanism/fault-kinds.ts'
import { patternCard } from './cards.ts'

let known: readonly Tried[] | null = null

/** Every kind of fault that goes by chance as it was tried: computed once in a build, for all the pages that say it. */
const allTried = (): readonly Tried[] => (known ??= triedByChance(patternCard))

/** A kind of fault that goes by chance as it was tried, amount by amount. */
export const triedOf = (kind: FaultKindName): readonly Tried[] =>
  allTried().filter(({ fault }) => fault.kind === kind)

/** The kinds that go by chance and look like this one at first on some machine, each at the amount that does so most. */
export const alikeByChance = (kind: FaultKindName): { tried: Tried; alike: ChanceLikeness }[] => {
  const most = new Map<FaultKindName, { tried: Tried; alike: ChanceLikeness }>()
  for (const tried of allTried())
    for (const alike of tried.alike) {
      const best = most.get(tried.fault.kind)
      if (alike.kind === kind && (!best || alike.machines > best.alike.machines))
        most.set(tried.fault.kind, { tried, alike })
    }
  return [...most.values()]
}
