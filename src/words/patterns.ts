import { dimensions } from '../mechanism/dimensions.ts'
import { at } from '../mechanism/lookup.ts'
import type { Pass } from '../mechanism/pass.ts'
import { sharedStep } from './lists.ts'

/** The patterns in which needles come out wrong, as they look on a bed. */
export const patterns = {
  none: 'none: every needle comes out as the card asks',
  one: 'one needle',
  eighth: 'every eighth needle',
  twentyFourth: 'every twenty-fourth needle',
  all: 'all that the card asked for',
  unasked: 'all that the card did not ask for',
  mixed: 'others, in no even steps',
} as const
export type Pattern = keyof typeof patterns

/** Which pattern a whole pass shows, by its needles that came out otherwise than asked. */
export const patternOf = (pass: Pass): Pattern => {
  const wrong = pass.departures.map(({ needle }) => needle)
  if (wrong.length === 0) return 'none'
  if (wrong.length === 1) return 'one'
  const missed = pass.departures.every(({ asked }) => asked === 'selected')
  const extra = pass.departures.every(({ asked }) => asked === 'plain')
  const asked = pass.asked.filter((outcome) => outcome === 'selected').length
  const step = sharedStep(wrong)
  if (step === dimensions.columns) return 'twentyFourth'
  if (step === dimensions.strips) return 'eighth'
  if (missed && wrong.length === asked) return 'all'
  if (extra && wrong.length === pass.asked.filter((outcome) => outcome === 'plain').length) return 'unasked'
  const first = at(wrong, 0)
  const isEvery = (count: number): boolean => wrong.every((index) => (index - first) % count === 0)
  if (isEvery(dimensions.columns)) return 'twentyFourth'
  return isEvery(dimensions.strips) ? 'eighth' : 'mixed'
}
