import { dimensions } from '../mechanism/dimensions.ts'
import type { Outcome } from '../mechanism/gate.ts'
import type { Pass } from '../mechanism/pass.ts'
import { needlesOfBed, ofNeedle } from '../mechanism/indices.ts'

/** The patterns in which needles come out wrong, as they look on a bed. */
export const patterns = {
  none: 'none: every needle comes out as the card asks',
  one: 'one needle',
  eighth: 'every eighth needle',
  twentyFourth: 'every twenty-fourth needle',
  eighthAsked: 'every eighth needle, where the card asks for it',
  eighthUnasked: 'every eighth needle, where the card does not ask for it',
  all: 'all that the card asked for',
  unasked: 'all that the card did not ask for',
  mixed: 'others, in no even steps',
} as const
export type Pattern = keyof typeof patterns

/** Which pattern a whole pass shows, by its needles that came out otherwise than asked: all that it names, and no others. */
export const patternOf = ({ asked, departures }: Pass): Pattern => {
  const wrong = new Set<number>(departures.map(({ needle }) => needle))
  const [first] = wrong
  if (first === undefined) return 'none'
  if (wrong.size === 1) return 'one'
  /** Whether just those are wrong of which the card asked one of these. */
  const areAll = (outcomes: readonly Outcome[], step = 1): boolean =>
    needlesOfBed(asked.length).every(
      (needle) =>
        wrong.has(needle) === ((needle - first) % step === 0 && outcomes.includes(ofNeedle(asked, needle))),
    )
  const whole: readonly Outcome[] = ['selected', 'plain']
  if (areAll(whole, dimensions.columns)) return 'twentyFourth'
  if (areAll(whole, dimensions.strips)) return 'eighth'
  if (areAll(['selected'])) return 'all'
  if (areAll(['plain'])) return 'unasked'
  if (areAll(['selected'], dimensions.strips)) return 'eighthAsked'
  return areAll(['plain'], dimensions.strips) ? 'eighthUnasked' : 'mixed'
}
