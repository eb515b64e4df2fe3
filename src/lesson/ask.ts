import type { CardLibrary } from '../link/state.ts'
import { drawFrom } from './draw.ts'
import type { Makers, Question } from './question.ts'

/** The chapter of a maker's id, such as `5.strip`. */
export const chapterOf = (maker: string): number => Number(maker.split('.')[0])

/** Asks one of a chapter's makers for the question of a seed; null where the chapter has no such maker. */
export const askFrom = (
  makers: Makers,
  maker: string,
  seed: number,
  library: CardLibrary,
): Question | null => {
  const name = maker.slice(maker.indexOf('.') + 1)
  const make = Object.hasOwn(makers, name) ? makers[name] : undefined
  return make
    ? { ...make({ draw: drawFrom(maker, seed), library }), id: `${maker}.${seed}`, maker, seed }
    : null
}
