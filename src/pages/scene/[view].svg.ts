import type { APIRoute, GetStaticPaths } from 'astro'
import { openingOf } from '../../site/chapter-page.ts'
import { allChapters } from '../../site/chapters.ts'
import { openingFile, sceneFile } from '../../site/scene.ts'
import { openingName } from '../../site/stills.ts'
import { sceneViewNames } from '../../words/figures/scene.ts'

/** A picture for every view of the machine in three dimensions, and for every chapter that opens with it. */
export const getStaticPaths: GetStaticPaths = async () => {
  const openings = (await allChapters())
    .map((chapter) => openingOf(chapter))
    .filter(({ ids }) => ids[0] === 'scene')
    .map(({ state, scene }) => ({
      params: { view: openingName(state, scene) },
      props: { draw: () => openingFile(state, scene) },
    }))
  const views = sceneViewNames.map((view) => ({ params: { view }, props: { draw: () => sceneFile(view) } }))
  return [...views, ...openings]
}

export const GET: APIRoute<{ draw: () => string }> = ({ props: { draw } }) =>
  new Response(draw(), { headers: { 'Content-Type': 'image/svg+xml' } })
