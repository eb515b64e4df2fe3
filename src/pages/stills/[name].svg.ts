import type { APIRoute, GetStaticPaths } from 'astro'
import { embeddedFigures } from '../../browser/embed-address.ts'
import { allChapters, outlineOfChapter } from '../../site/chapters.ts'
import { figureOpenings } from '../../site/figure-openings.ts'
import { stillName, stillPicture } from '../../site/stills.ts'

/**
 * A still picture for every step of every chapter, and for every figure in other people's pages, for readers without scripts;
 * the machine's are with its views.
 */
export const getStaticPaths: GetStaticPaths = async () => {
  const stills = new Map<string, { figure: string; state: string }>()
  const steps = (await allChapters()).flatMap((chapter) => outlineOfChapter(chapter).steps)
  const openings = (await figureOpenings(embeddedFigures)).map(({ id, state }) => ({ figure: id, state }))
  for (const { figure, state } of [...steps, ...openings])
    if (figure !== 'scene') stills.set(stillName(figure, state), { figure, state })
  return [...stills].map(([name, props]) => ({ params: { name }, props }))
}

export const GET: APIRoute<{ figure: string; state: string }> = ({ props: { figure, state } }) =>
  new Response(stillPicture(figure, state), { headers: { 'Content-Type': 'image/svg+xml' } })
