import type { Query } from '../../find/query.ts'
import { slips } from '../../find/chances.ts'
import { usualPlace } from '../../mechanism/bed.ts'
import type { Draws } from './draws.ts'
import type { Machine } from './machine.ts'

/** How often a needle is noted wrongly on the bench, and how often it is then noted as one of the two likely letters. */
const slip = { chance: 0.003, likely: 0.95 } as const

/** What is noted of a needle in place of what it did. */
const wrongLetter = (letter: string, { is, pick }: Draws): string => {
  if (letter === 'u') return pick(['s', 'p'])
  const other = letter === 's' ? 'p' : 's'
  return is(slip.likely) ? other : 'u'
}

/** Beds as somebody notes them who slips now and then. */
export const notedBeds = (beds: readonly string[], draws: Draws): string[] =>
  beds.map((bed) =>
    Array.from(bed, (letter) => (draws.is(slip.chance) ? wrongLetter(letter, draws) : letter)).join(''),
  )

/** What the finder is asked of a machine whose looks were noted as these beds. */
export const queryOf = ({ card, looks }: Machine, noted: readonly string[]): Query => ({
  ...usualPlace,
  card,
  passes: looks.map(({ row, way, speed, pass }, n) => ({ card, row, way, speed, pass, needles: noted[n]! })),
  slip: slips.sure,
  checks: [],
})
