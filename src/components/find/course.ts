import { everyHole } from '../../mechanism/card.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { adviceOf } from './advise.ts'
import { withoutAmount } from './asked.ts'
import type { Advice, Ask, AskedPass } from './messages.ts'
import { needlesWith } from './practice.ts'
import { suspectsAsked } from './reckon.ts'
import { sureSlip } from './slip.ts'

/** The most passes of a course: what no pass tells apart needs a look at the parts. */
const longest = 6

/** As sure as a course needs to be. */
const sure = 0.95

const passFor = ({ pass }: Advice, first: AskedPass): AskedPass | null => {
  if (!pass) return null
  const cards = { same: first.card, none: null, 'all-holes': [everyHole], blank: [0] }
  const { card, ...noted } = pass
  return { ...noted, card: cards[card], isOwn: card === 'same' && first.isOwn, needles: '' }
}

const distinctWays = (ways: readonly (readonly { fault: Fault }[])[]): string[] => [
  ...new Set(ways.map((way) => way.map(({ fault }) => withoutAmount(fault)).join())),
]

/** A course of passes to a fault, by taking the check that settles most each time, until passes settle no more. */
export const courseTo = (fault: Fault, first: AskedPass): AskedPass[] => {
  const passes = [first]
  for (;;) {
    const beds = needlesWith(passes, fault)
    const seen = passes.map((pass, n) => ({ ...pass, needles: beds[n] ?? '' }))
    const ask: Ask = { id: 0, slip: sureSlip, passes: seen, checked: [] }
    const { dictionary, suspects } = suspectsAsked(ask)
    const [best] = suspects
    const isFound = best && best.probability > sure && distinctWays(best.ways).length === 1
    if (isFound || passes.length === longest) return passes
    const next = adviceOf(ask, dictionary, suspects)
      .map((advice) => passFor(advice, first))
      .find((pass) => pass !== null)
    if (!next) return passes
    passes.push(next)
  }
}
