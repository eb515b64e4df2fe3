import type { Run } from '../mechanism/pass.ts'
import type { ModelName } from '../drawings/scene/machine/models.ts'
import { viewOfStep } from '../drawings/scene/step-view.ts'
import { readSceneStep, type SceneAttributes } from '../words/figures/scene-step.ts'
import { machineInState } from './machine-state.ts'
import { allChapters, type Chapter, outlineOfChapter, slugOf } from './chapters.ts'

/** The paths of a page that every chapter has. */
export const chapterPaths = async (): Promise<{ params: { slug: string }; props: { chapter: Chapter } }[]> =>
  (await allChapters()).map((chapter) => ({ params: { slug: slugOf(chapter) }, props: { chapter } }))

/** What a page of a chapter's steps opens with, before any script runs. */
export interface Opening {
  /** The first step's state, as a link's text. */
  readonly state: string
  /** The machine in that state. */
  readonly run: Run
  /** The figures that its steps and its questions need, the first step's first. */
  readonly ids: readonly string[]
  /** How the first step shows the machine in three dimensions, where that is its figure. */
  readonly scene: SceneAttributes
  /** The ways in which its steps lay the machine out that is in three dimensions. */
  readonly models: readonly ModelName[]
}

/** How a chapter opens. Throws where it has no steps: its file is ours. */
export const openingOf = (chapter: Chapter): Opening => {
  const { data } = chapter
  const { steps } = outlineOfChapter(chapter)
  const [first] = steps
  if (!first) throw new Error(`chapter ${data.number} has no steps`)
  const { state } = first
  // Questions show their answers on the whole chain.
  return {
    state,
    run: machineInState(state).run,
    ids: [...new Set([first.figure, ...data.figures, 'chain'])],
    scene: first.scene,
    models: [
      ...new Set(
        steps
          .filter(({ figure }) => figure === 'scene')
          .map(({ scene }) => viewOfStep(readSceneStep(scene)).model),
      ),
    ],
  }
}

/** How many elements of each page have counted themselves. */
const counts = new WeakMap<Request, number>()

/** A number that is unique on its page, the same in every build: the page's elements count themselves. */
export const uniqueOnPage = (request: Request): number => {
  const count = (counts.get(request) ?? 0) + 1
  counts.set(request, count)
  return count
}
