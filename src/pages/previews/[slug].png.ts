import type { APIRoute, GetStaticPaths } from 'astro'
import { allChapters, slugOf } from '../../site/chapters.ts'
import { allFaults, faultSlug } from '../../site/faults.ts'
import { chapterPreview, faultPreview, sitePreview } from '../../site/preview/previews.ts'
import { type Preview, previewPicture } from '../../site/preview/picture.ts'
import { pngOf } from '../../site/preview/renderer.ts'

/** A preview picture for every kind of fault and every chapter, and one for all other pages. */
export const getStaticPaths: GetStaticPaths = async () => [
  { params: { slug: 'site' }, props: { preview: sitePreview() } },
  ...(await allChapters()).map((chapter) => ({
    params: { slug: slugOf(chapter) },
    props: { preview: chapterPreview(chapter.data) },
  })),
  ...(await allFaults()).map(({ kind }) => ({
    params: { slug: faultSlug(kind) },
    props: { preview: faultPreview(kind) },
  })),
]

export const GET: APIRoute<{ preview: Preview }> = async ({ props }) => {
  const png = await pngOf(await previewPicture(props.preview))
  return new Response(png, { headers: { 'Content-Type': 'image/png' } })
}
