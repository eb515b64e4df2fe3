import type { Level } from '../find/deal-machine.ts'
import type { Fault } from '../mechanism/fault.ts'
import { faultPhrase } from './faults.ts'
import { counted, listed } from './lists.ts'
import { lower } from './parts.ts'

/** The levels of practice in a few words. */
export const levelNames: Readonly<Record<Level, string>> = {
  1: 'one',
  2: 'two or three',
  3: 'an old machine, up to eight',
}

const how = 'Choose the row, the way and the speed, and add passes: the page shows how each bed comes out.'

const several: Readonly<Record<Exclude<Level, 1>, string>> = {
  2: 'Two or three parts of this machine are broken.',
  3: 'The oil of this machine has set, and four to eight things are wrong; it may be worn as well.',
}

/** What there is to do at a level. */
export const taskWords = (level: Level): string =>
  level === 1
    ? `One part of this machine is broken. ${how} Say what it is after as few and as cheap passes as you can.`
    : `${several[level]} ${how} Name each thing, and then say that it is all.`

const phrases = (faults: readonly Fault[]): string => listed(faults.map((fault) => lower(faultPhrase(fault))))

/** What somebody named, judged. */
export interface Judged {
  readonly right: readonly Fault[]
  readonly wrong: readonly Fault[]
  /** Not named, though they show in the passes that were seen; and those that do not show there. */
  readonly missed: readonly Fault[]
  readonly hidden: readonly Fault[]
}

/** The verdict on what was named, in a few sentences. */
export const judgedWords = ({ right, wrong, missed, hidden }: Judged): string =>
  [
    right.length === 0 ? 'None of what you named is so.' : `Right: ${phrases(right)}.`,
    ...(wrong.length > 0 && right.length > 0 ? [`Not so: ${phrases(wrong)}.`] : []),
    ...(missed.length > 0 ? [`You did not name what shows in your passes: ${phrases(missed)}.`] : []),
    ...(hidden.length > 0 ? [`Your passes hardly show: ${phrases(hidden)}.`] : []),
  ].join(' ')

/** How many of what is wrong the page itself names: after the learner's passes, and after those of its own advice, which cost so much. */
export const finderWords = (all: number, after: number, cost: string, advised: number): string =>
  `After your passes the page itself names ${after} of ${counted(all, 'place')} that are wrong. By its own advice it makes ${cost}, and names ${advised}.`
