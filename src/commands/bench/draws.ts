import { at } from '../../mechanism/lookup.ts'
import { uniformDraw } from '../../mechanism/random.ts'

/** Chance by a seed: what is drawn depends on the seed and on how much was drawn before, and on nothing else. */
export interface Draws {
  /** A number between two others. */
  readonly between: (least: number, most: number) => number
  /** A whole number between two others, both included. */
  readonly whole: (least: number, most: number) => number
  /** Whether something that has this chance is so. */
  readonly is: (chance: number) => boolean
  /** One of a list, each as likely. Throws a RangeError where the list is empty. */
  readonly pick: <Entry>(list: readonly Entry[]) => Entry
  /** So many different ones of a list, all where it has no more, in the order drawn. */
  readonly several: <Entry>(list: readonly Entry[], count: number) => Entry[]
}

/** Draws by a seed, a whole number below 2^32. */
export const drawsOf = (seed: number): Draws => {
  let drawn = 0
  // The bench's seeds are no machine's, so its draws are apart from what the mechanism draws of its parts.
  const uniform = (): number => uniformDraw(seed, 'pin', drawn++)
  const whole = (least: number, most: number): number => least + Math.floor(uniform() * (most - least + 1))
  return {
    between: (least, most) => least + uniform() * (most - least),
    whole,
    is: (chance) => uniform() < chance,
    pick: (list) => at(list, whole(0, list.length - 1)),
    several(list, count) {
      const left = [...list]
      const drawnOnes: (typeof left)[number][] = []
      while (drawnOnes.length < count && left.length > 0)
        drawnOnes.push(...left.splice(whole(0, left.length - 1), 1))
      return drawnOnes
    },
  }
}
