import type { Pass } from '../mechanism/pass.ts'
import { sharedStep } from './lists.ts'

/** The patterns in which needles come out wrong, as one sees them on a bed. */
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
  if (step === 24) return 'twentyFourth'
  if (step === 8) return 'eighth'
  if (missed && wrong.length === asked) return 'all'
  if (extra && wrong.length === pass.asked.filter((outcome) => outcome === 'plain').length) return 'unasked'
  return wrong.every((index) => (index - (wrong[0] ?? 0)) % 24 === 0)
    ? 'twentyFourth'
    : wrong.every((index) => (index - (wrong[0] ?? 0)) % 8 === 0)
      ? 'eighth'
      : 'mixed'
}
