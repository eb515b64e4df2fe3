import type { Pass } from '../../mechanism/pass.ts'
import { needlesListed } from '../../words/lists.ts'
import { indexesOf, passOf, type Scene, sorted, type Stretch, textOf, underPresser } from '../scene.ts'
import type { Kit, Needles, Picture } from '../question.ts'
import { whyNeedle, wrongIn } from '../seen.ts'

/** A mix-up: the scene whose needles it gives, or the needles themselves; and what is to be said to it. */
export interface Slip {
  readonly scene?: Scene
  readonly chosen?: readonly number[]
  readonly reason: string
}

/** What a maker says of a prediction; the needles and the reasons follow from the model. */
export interface Prediction {
  readonly prompt: string
  readonly scene: Scene
  /** The machine as the question finds it, where `scene` itself would tell the answer. */
  readonly start?: Scene
  readonly stretch: Stretch
  readonly goal: Needles['goal']
  readonly pictures: readonly Picture[]
  readonly slips: readonly Slip[]
  /** Why it comes out so, as a sentence. */
  readonly because: string
}

/** The needles of a stretch that a pass selects, or that come out otherwise than asked. */
export const goalOf = (pass: Pass, stretch: Stretch, goal: Needles['goal']): number[] =>
  goal === 'wrong'
    ? wrongIn(pass, stretch).map(({ needle }) => needle)
    : indexesOf(stretch).filter((index) => pass.came[index] === 'selected')

const goalWords = (goal: Needles['goal'], right: readonly number[]): string =>
  right.length > 0
    ? needlesListed(right)
    : goal === 'wrong'
      ? 'No needle here comes out wrong'
      : 'No needle here comes forward'

/** A question that asks for needles, answered by running the scene. */
export const predict = ({ library }: Kit, asked: Prediction): Needles => {
  const { scene, stretch, goal } = asked
  const pass = passOf(library, scene)
  const right = goalOf(pass, stretch, goal)
  const taken = new Set([right.join()])
  const slips = asked.slips.flatMap((slip) => {
    const chosen = slip.chosen ?? goalOf(passOf(library, slip.scene ?? scene), stretch, goal)
    // Where another scene would show nothing, its reason does not fit an empty answer.
    if (taken.has(chosen.join()) || (slip.scene && chosen.length === 0)) return []
    taken.add(chosen.join())
    return [{ chosen, reason: slip.reason, show: textOf(library, sorted(slip.scene ?? scene, stretch)) }]
  })
  return {
    kind: 'needles',
    prompt: asked.prompt,
    state: textOf(library, asked.start ?? scene),
    pictures: asked.pictures,
    goal,
    needles: indexesOf(stretch).map((index) => ({
      index,
      right: right.includes(index),
      reason: whyNeedle(pass, index),
      show: textOf(library, underPresser(scene, index)),
    })),
    slips,
    right: {
      reason: `${goalWords(goal, right)}: ${asked.because}`,
      show: textOf(library, sorted(scene, stretch)),
    },
  }
}
