import type { Answer } from '../../find/messages.ts'
import type { DealtMachine } from '../../find/deal-machine.ts'
import { shownFaults } from '../../find/practice.ts'
import { type CardAndPasses, kindAndPlace } from '../../find/query.ts'
import type { SeenPass } from '../../link/session.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { passesWords } from '../../words/best-course.ts'
import { faultPhrase } from '../../words/faults.ts'
import { lower } from '../../words/parts.ts'
import { judgedWords } from '../../words/practice.ts'

const settingOf = ({ card, row, way, speed }: SeenPass): string => JSON.stringify([card, row, way, speed])

/** Those of some passes that earlier ones lack, each as often as it is there. */
export const newAmong = (passes: readonly SeenPass[], earlier: readonly SeenPass[]): SeenPass[] => {
  const left = earlier.map(settingOf)
  return passes.filter((pass) => {
    const place = left.indexOf(settingOf(pass))
    if (place >= 0) left.splice(place, 1)
    return place < 0
  })
}

/** Whether passes leave one answer of which both faults are ways: they show the same. */
const lookAlike = (answers: readonly Answer[], one: Fault, other: Fault): boolean =>
  answers.some(({ ways }) => {
    const ids = ways.flatMap((way) => (way.length === 1 ? way.map(kindAndPlace) : []))
    return ids.includes(kindAndPlace(one)) && ids.includes(kindAndPlace(other))
  })

/** What somebody said of a machine with one fault, and what it took: so many passes, with their cost in words. */
interface Guess {
  readonly guess: Fault
  readonly truth: Fault
  readonly answers: readonly Answer[]
  readonly passes: number
  readonly cost: string
}

/** The verdict where there is one fault. */
export const verdictOnOne = ({ guess, truth, answers, passes, cost }: Guess): string => {
  if (kindAndPlace(guess) === kindAndPlace(truth)) return `Right, in ${cost}: ${faultPhrase(truth)}.`
  return lookAlike(answers, guess, truth)
    ? `It is this: ${lower(faultPhrase(truth))}. Your ${passesWords(passes)} can’t tell it from your answer.`
    : `No, after ${cost}. It is this: ${lower(faultPhrase(truth))}.`
}

/** The verdict on what was named of a machine with several faults, after the passes of a query. */
export const verdictOnMany = (
  named: readonly Fault[],
  machine: DealtMachine,
  query: CardAndPasses,
): string => {
  const truths = new Set(machine.faults.map(kindAndPlace))
  const own = new Set(named.map(kindAndPlace))
  const shows = new Set(shownFaults(query, machine))
  const missed = machine.faults.filter((fault) => !own.has(kindAndPlace(fault)))
  return judgedWords({
    right: named.filter((fault) => truths.has(kindAndPlace(fault))),
    wrong: named.filter((fault) => !truths.has(kindAndPlace(fault))),
    missed: missed.filter((fault) => shows.has(fault)),
    hidden: missed.filter((fault) => !shows.has(fault)),
  })
}
