import type { FaultKindName } from '../mechanism/fault-kinds.ts'

/** Kinds of fault of which chance decides again at each turn, or in each pass. */
export const kindsByChance = ['pin.sticky', 'pivots.loose', 'retainer.worn'] as const
export type KindByChance = (typeof kindsByChance)[number]

export const isKindByChance = (kind: FaultKindName): kind is KindByChance =>
  kindsByChance.some((one) => one === kind)
