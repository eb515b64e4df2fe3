import { needleName } from '../mechanism/bed.ts'
import { type Part, type PartId, partOf, sortedByIds } from '../mechanism/part.ts'
import { listed } from './lists.ts'

const nameOf = (part: Part): string => {
  switch (part.kind) {
    case 'card':
    case 'turn':
    case 'sweep':
    case 'belt':
    case 'presser':
    case 'carriage':
      return `the ${part.kind}`
    case 'lever':
      return 'the lever for reading rows twice'
    case 'pivots':
      return 'the pivots of pins and rockers'
    case 'retainer':
      return 'the retainer bar'
    case 'pawl':
      return part.side === null ? 'the pawls' : `the ${part.side} pawl`
    case 'pin':
    case 'rocker':
      return `${part.kind} ${part.column}`
    case 'strip':
      return `strip ${part.strip}`
    case 'needle':
      return `needle ${needleName(part.needle)}`
    case 'catch':
      return `the catch of ${needleName(part.needle)}`
    case 'gate':
      return part.gate === 1 ? 'the first gate' : 'the second gate'
  }
}

/** A part's name as the trade says it: `strip.3` is strip 3, `presser.right` the presser. */
export const partName = (part: PartId): string => nameOf(partOf(part))

/** Several parts' names in one phrase, each once, sorted by number. */
export const partNames = (parts: Iterable<PartId>): string =>
  listed(sortedByIds([...new Set(parts)], (part) => part).map(partName))

/** A phrase with a capital first letter. */
export const capital = (phrase: string): string => phrase.charAt(0).toUpperCase() + phrase.slice(1)

/** A phrase for inside a sentence, without its capital; the names of needles keep theirs. */
export const lower = (phrase: string): string =>
  phrase.replace(/^[A-Z](?=[a-z])/, (letter) => letter.toLowerCase())
