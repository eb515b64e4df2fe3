import type { Fault } from '../mechanism/fault.ts'
import { faultPhrase } from './faults.ts'
import { listed } from './lists.ts'
import { minutesWords } from './pace.ts'
import { lower } from './parts.ts'

/** A number of passes: 1 pass, 3 passes. */
export const passesWords = (count: number): string => (count === 1 ? '1 pass' : `${count} passes`)

/** Passes and the time they take: 3 passes, about 2 minutes. */
export const costWords = (count: number, minutes: number): string =>
  `${passesWords(count)}, about ${minutesWords({ minutes })}`

/** The sentence under the best course: how it is known to be the best. */
export const provedWords = (isProved: boolean): string =>
  isProved
    ? 'No other passes prove it in less time: all rows of this card, a blank card, one of all holes, and no card, at three speeds, were tried. Times are common practice; notes are taken to be without a slip.'
    : 'The search for a cheaper one was cut short, so there may be one.'

/** Faults that no pass can tell apart from the one found, in a sentence; empty where there are none. */
export const alikeWords = (alike: readonly Fault[]): string => {
  if (alike.length === 0) return ''
  const names = alike.slice(0, 4).map((fault) => lower(faultPhrase(fault)))
  const more = alike.length - names.length
  return `From outside these look the same: ${listed([...names, ...(more > 0 ? [`${more} more`] : [])])}. Only a look at the parts tells.`
}

/** The page's own advice beside the best course, by the minutes that each takes. */
export const advisedWords = (count: number, minutes: number, best: number): string => {
  const more = Math.round((minutes - best) * 10) / 10
  const gap =
    more > 0
      ? `about ${minutesWords({ minutes: more })} more than the best course`
      : 'as little as the best course'
  return `The page’s own advice does not know the fault. It takes what settles most for its time, one pass after the other, and needs ${costWords(count, minutes)}: ${gap}.`
}
