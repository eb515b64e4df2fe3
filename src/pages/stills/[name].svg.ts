import type { APIRoute, GetStaticPaths } from 'astro'
import { allChapters, outlineOfChapter } from '../../site/chapters.ts'
import { stillName, stillPicture } from '../../site/stills.ts'

/** A still picture for every step of every chapter, for readers without scripts; the machine's are with its views. */
export const getStaticPaths: GetStaticPaths = async () => {
  const stills = new Map<string, { figure: string; state: string }>()
  for (const chapter of await allChapters())
    for (const { figure, state } of outlineOfChapter(chapter).steps)
      if (figure !== 'scene') stills.set(stillName(figure, state), { figure, state })
  return [...stills].map(([name, props]) => ({ params: { name }, props }))
}

export const GET: APIRoute<{ figure: string; state: string }> = ({ props: { figure, state } }) =>
  new Response(stillPicture(figure, state), { headers: { 'Content-Type': 'image/svg+xml' } })
