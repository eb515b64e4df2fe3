import { faultKinds, type FaultKindName } from '../../mechanism/fault-kinds.ts'
import { parsePart, type Part } from '../../mechanism/part.ts'

const names = Object.keys(faultKinds) as FaultKindName[]

/** What the names of a part's kinds of fault begin with. */
const beginningsOf = (part: Part): readonly string[] => {
  switch (part.kind) {
    case 'card':
      return ['card.', 'pawl.', 'turn.']
    case 'lever':
      return ['turn.twice']
    case 'sweep':
      return ['sweep.', 'belt.']
    case 'needle':
      return ['needle.', 'catch.', 'retainer.']
    case 'gate':
      return [`gate.${part.gate}.`]
    case 'carriage':
    case 'turn':
    case 'pivots':
    case 'belt':
    case 'retainer':
    case 'pawl':
    case 'presser':
    case 'pin':
    case 'rocker':
    case 'strip':
    case 'catch':
      return [`${part.kind}.`]
  }
}

/** The kinds of fault that a part can have, in the catalogue's order; none for a text that names no part. */
export const faultsOfPart = (id: string): FaultKindName[] => {
  const part = parsePart(id)
  if (!part) return []
  const beginnings = beginningsOf(part)
  return names.filter((name) => beginnings.some((beginning) => name.startsWith(beginning)))
}
