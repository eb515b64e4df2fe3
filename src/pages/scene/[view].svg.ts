import type { APIRoute, GetStaticPaths } from 'astro'
import { sceneFile } from '../../site/scene.ts'
import { type SceneViewName, sceneViewNames } from '../../words/figures/scene.ts'

/** A picture for every view of the machine in three dimensions. */
export const getStaticPaths = (() =>
  sceneViewNames.map((view) => ({ params: { view }, props: { view } }))) satisfies GetStaticPaths

export const GET: APIRoute<{ view: SceneViewName }> = ({ props: { view } }) =>
  new Response(sceneFile(view), { headers: { 'Content-Type': 'image/svg+xml' } })
