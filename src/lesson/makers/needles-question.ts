import type { Pass } from '../../mechanism/pass.ts'
import { toNeedle, ofNeedle } from '../../mechanism/indices.ts'
import { needlesListed } from '../../words/lists.ts'
import { type NeedleRange, needlesIn } from '../needle-range.ts'
import { passOf, type Setup, sorted, linkText, underPresser } from '../setup.ts'
import type { Kit, Needles, Picture } from '../question.ts'
import { needleReason, departuresIn } from '../bed-view.ts'

/** A known mix-up: the setup whose needles it gives, or the needles themselves; and what to say to it. */
export interface Slip {
  readonly setup?: Setup
  readonly chosen?: readonly number[]
  readonly reason: string
}

/** What a maker says of a prediction; the needles and the reasons follow from the model. */
export interface Prediction {
  readonly prompt: string
  readonly setup: Setup
  /** The machine as the question shows it, where `setup` itself would give the answer away. */
  readonly start?: Setup
  readonly range: NeedleRange
  readonly goal: Needles['goal']
  readonly pictures: readonly Picture[]
  readonly slips: readonly Slip[]
  /** Why it comes out so, as a sentence. */
  readonly because: string
}

/** The needles of a range that a pass selects, or that come out otherwise than asked. */
export const goalOf = (pass: Pass, range: NeedleRange, goal: Needles['goal']): number[] =>
  goal === 'wrong'
    ? departuresIn(pass, range).map(({ needle }) => needle)
    : needlesIn(range).filter((index) => ofNeedle(pass.came, index) === 'selected')

const goalWords = (goal: Needles['goal'], right: readonly number[]): string =>
  right.length > 0
    ? needlesListed(right)
    : goal === 'wrong'
      ? 'No needle here comes out wrong'
      : 'No needle here comes forward'

/** A question that asks for needles, answered by running the setup. */
export const needlesQuestion = (kit: Kit, asked: Prediction): Needles => {
  const { setup, range, goal } = asked
  const pass = passOf(kit, setup)
  const right = goalOf(pass, range, goal)
  const taken = new Set([right.join()])
  const slips = asked.slips.flatMap((slip) => {
    const chosen = slip.chosen ?? goalOf(passOf(kit, slip.setup ?? setup), range, goal)
    // Where another setup would show nothing, its reason does not fit an empty answer.
    if (taken.has(chosen.join()) || (slip.setup && chosen.length === 0)) return []
    taken.add(chosen.join())
    return [{ chosen, reason: slip.reason, show: linkText(kit, sorted(slip.setup ?? setup, range)) }]
  })
  return {
    kind: 'needles',
    prompt: asked.prompt,
    state: linkText(kit, asked.start ?? setup),
    pictures: asked.pictures,
    goal,
    needles: needlesIn(range).map((index) => ({
      index,
      right: right.includes(index),
      reason: needleReason(pass, toNeedle(index), kit),
      show: linkText(kit, underPresser(setup, index)),
    })),
    slips,
    right: {
      reason: `${goalWords(goal, right)}: ${asked.because}`,
      show: linkText(kit, sorted(setup, range)),
    },
  }
}
