import { everyHole } from '../../mechanism/card.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { adviceOf } from './advise.ts'
import { withoutAmount } from './asked.ts'
import { confusedWith } from './best-course.ts'
import type { Advice, Ask, AskedPass } from './messages.ts'
import { needlesWith } from './practice.ts'
import { suspectsAsked } from './reckon.ts'
import { sureSlip } from './slip.ts'

/** The most passes of a course: what no pass tells apart needs a look at the parts. */
const longest = 6

const passFor = ({ pass }: Advice, first: AskedPass): AskedPass | null => {
  if (!pass) return null
  const cards = { same: first.card, none: null, 'all-holes': [everyHole], blank: [0] }
  const { card, ...noted } = pass
  return { ...noted, card: cards[card], isOwn: card === 'same' && first.isOwn, needles: '' }
}

/** Whether passes tell a fault from all that any pass tells it from. */
const isParted = (fault: Fault, passes: readonly AskedPass[], alike: readonly Fault[]): boolean => {
  const { faults, isSound } = confusedWith(fault, passes)
  const left = new Set(alike.map(withoutAmount))
  return !isSound && faults.every((other) => left.has(withoutAmount(other)))
}

/**
 * The course that the page's own advice takes to a fault without knowing it: the pass that settles most for its time
 * each time, until what is left looks alike to every pass. Greedy: a cheaper course may exist.
 */
export const courseTo = (fault: Fault, first: AskedPass, alike: readonly Fault[] = []): AskedPass[] => {
  const passes = [first]
  while (passes.length < longest && !isParted(fault, passes, alike)) {
    const beds = needlesWith(passes, fault)
    const seen = passes.map((pass, n) => ({ ...pass, needles: beds[n] ?? '' }))
    const ask: Ask = { id: 0, slip: sureSlip, passes: seen, checked: [] }
    const { dictionary, suspects } = suspectsAsked(ask)
    const next = adviceOf(ask, dictionary, suspects)
      .map((advice) => passFor(advice, first))
      .find((pass) => pass !== null)
    if (!next) break
    passes.push(next)
  }
  return passes
}
