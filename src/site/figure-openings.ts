import type { SceneAttributes } from '../words/figures/scene-step.ts'
import { allChapters, outlineOfChapter } from './chapters.ts'

/** What a figure shows where nothing else is asked of it. */
export interface FigureOpening {
  readonly id: string
  /** As a link's text. */
  readonly state: string
  readonly scene: SceneAttributes
}

/** States of figures that no step of a chapter shows: links, the workbench and other people's pages have them still. */
const ownStates: Readonly<Record<string, string>> = {
  hold: 'at=R8',
  gates: 'at=R12',
  place: 'at=R40',
  pins: 'at=R23&break=card.side=0.9',
  strip: 'at=R23',
}

/**
 * What each of these figures shows where nothing else is asked of it: what the first step shows that has it, or a state
 * of its own. Throws where there is neither.
 */
export const figureOpenings = async (ids: readonly string[]): Promise<FigureOpening[]> => {
  const steps = (await allChapters()).flatMap((chapter) => outlineOfChapter(chapter).steps)
  return ids.map((id) => {
    const step = steps.find(({ figure }) => figure === id)
    const state = step?.state ?? ownStates[id]
    if (state === undefined) throw new Error(`nothing says in which state the figure ${id} opens`)
    return { id, state, scene: step?.scene ?? {} }
  })
}
