import type { APIRoute, GetStaticPaths } from 'astro'
import { allChapters, outlineOfChapter } from '../../site/chapters.ts'
import { sceneFile, stepFile } from '../../site/scene.ts'
import { stepName } from '../../site/stills.ts'
import { partsViewNames } from '../../words/figures/scene.ts'

/** A picture for every view of the machine in three dimensions, and for every step of a chapter that shows it. */
export const getStaticPaths: GetStaticPaths = async () => {
  const drawn = new Map<string, () => string>(partsViewNames.map((view) => [view, () => sceneFile(view)]))
  for (const chapter of await allChapters())
    for (const { figure, state, scene } of outlineOfChapter(chapter).steps)
      if (figure === 'scene') drawn.set(stepName(state, scene), () => stepFile(state, scene))
  return [...drawn].map(([view, draw]) => ({ params: { view }, props: { draw } }))
}

export const GET: APIRoute<{ draw: () => string }> = ({ props: { draw } }) =>
  new Response(draw(), { headers: { 'Content-Type': 'image/svg+xml' } })
