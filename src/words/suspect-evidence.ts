import type { Fit } from '../find/evidence.ts'
import type { RankedAnswer } from '../find/rank.ts'
import { counted } from './lists.ts'

/** What a reason is given for: an answer, with its predictions by pass as they are, or as they were sent. */
export interface Reasoned {
  readonly kind: RankedAnswer['kind']
  readonly fit: Fit | null
  readonly shown: readonly { readonly changed: ArrayLike<number>; readonly chance: number }[] | null
}

/** Why an answer has its place in the ranking, in a sentence of needles. */
export const evidenceWords = ({ kind, fit, shown }: Reasoned): string => {
  if (kind === 'unknown')
    return 'Something comes out wrong that no fault known here explains, nor two at once.'
  if (!fit) return 'Almost nothing points to it.'
  const { departures, explained, against, looked } = fit
  // The same needle may come out wrong in several passes.
  const each = (shown?.length ?? 1) > 1 ? ', counted once in each pass' : ''
  const needles = `${departures === 1 ? 'needle' : `${departures} needles`} that came out wrong${each}`
  if (kind === 'sound' && looked === 0) return 'No needle was looked at.'
  if (kind === 'sound')
    return departures === 0
      ? `All of the ${counted(looked, 'needle')} looked at came out as asked${each}.`
      : `Then ${departures} of the ${counted(looked, 'needle')} looked at would have been noted wrongly${each}.`
  if (shown?.every(({ changed, chance }) => changed.length === 0 && chance === 0))
    return departures === 0
      ? 'It would not have shown in the passes that were looked at.'
      : departures === 1
        ? `It does not explain the ${needles}.`
        : `It explains none of the ${needles}.`
  const should = against - (departures - explained)
  const contrary =
    should > 0
      ? `; ${counted(should, 'needle')} that came out as asked should not have`
      : ', and nothing else'
  const late = shown?.some(({ chance }) => chance > 0) ? ', some by chance' : ''
  const left = departures - explained
  const unexplained = `, and leaves ${left === 1 ? 'the other one' : `the other ${left}`} unexplained${should > 0 ? contrary : ''}`
  return explained === departures
    ? `It explains ${departures === 1 ? 'the' : 'all of the'} ${needles}${late}${contrary}.`
    : explained === 0
      ? `It does not explain the ${needles}${late}${should > 0 ? contrary : ''}.`
      : `It explains ${explained} of the ${needles}${late}${unexplained}.`
}
