import type { APIRoute, GetStaticPaths } from 'astro'
import { allChapters, outlineOfChapter } from '../../site/chapters.ts'
import type { SceneAttributes } from '../../words/figures/scene-step.ts'
import { stillName, stillPicture } from '../../site/stills.ts'

/** A still picture for every step of every chapter, for readers without scripts. */
export const getStaticPaths: GetStaticPaths = async () => {
  const stills = new Map<string, { figure: string; state: string; scene: SceneAttributes }>()
  for (const chapter of await allChapters())
    for (const { figure, state, scene } of outlineOfChapter(chapter).steps)
      stills.set(stillName(figure, state, scene), { figure, state, scene })
  return [...stills].map(([name, props]) => ({ params: { name }, props }))
}

export const GET: APIRoute<{ figure: string; state: string; scene: SceneAttributes }> = ({
  props: { figure, state, scene },
}) => new Response(stillPicture(figure, state, scene), { headers: { 'Content-Type': 'image/svg+xml' } })
