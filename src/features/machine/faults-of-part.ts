import type { Hit } from '../../drawings/chain/hit.ts'
import { faultKinds, type FaultKindName } from '../../mechanism/fault-kinds.ts'

const names = Object.keys(faultKinds) as FaultKindName[]

/** The beginnings of the kinds that a kind of part can have, where they are not its own name. */
const beginnings: Readonly<Record<string, readonly string[]>> = {
  card: ['card.', 'pawl.', 'turn.'],
  sweep: ['sweep.', 'belt.'],
  needle: ['needle.', 'catch.', 'retainer.'],
  carriage: [],
}

/** The kinds of fault that a part can have, in the catalogue's order. */
export const faultsOfPart = (part: Hit['part']): FaultKindName[] => {
  const [kind = ''] = part.split('.')
  const starts = kind === 'gate' ? [`${part}.`] : (beginnings[kind] ?? [`${kind}.`])
  return names.filter((name) => starts.some((start) => name.startsWith(start)))
}
