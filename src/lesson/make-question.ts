import { type CardPlace, usualPlace } from '../mechanism/bed.ts'
import type { CardLibrary } from '../link/state.ts'
import { seededRandom } from './seeded-random.ts'
import type { Makers, Question } from './question.ts'

/** The chapter of a maker's id, such as `5.strip`. */
export const chapterOfMaker = (maker: string): number => Number(maker.split('.')[0])

/** Asks one of a chapter's makers for the question of a seed; null where the chapter has no such maker. */
export const makeQuestion = (
  makers: Makers,
  maker: string,
  seed: number,
  library: CardLibrary,
  { columnOne }: CardPlace = usualPlace,
): Question | null => {
  const name = maker.slice(maker.indexOf('.') + 1)
  const make = Object.hasOwn(makers, name) ? makers[name] : undefined
  return make
    ? {
        ...make({ random: seededRandom(maker, seed), library, columnOne }),
        id: `${maker}.${seed}`,
        maker,
        seed,
      }
    : null
}
