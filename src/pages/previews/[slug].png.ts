import type { APIRoute, GetStaticPaths } from 'astro'
import { allFaults, faultSlug } from '../../site/faults.ts'
import { patternCard } from '../../site/cards.ts'
import { type Preview, previewPicture } from '../../site/preview/picture.ts'
import { pngOf } from '../../site/preview/renderer.ts'
import { exampleOf, type Look, lookAt } from '../../find/battery.ts'
import { plainestOf } from '../../find/contrast.ts'
import { firstShown } from '../../find/likeness.ts'
import { wholeBed } from '../../mechanism/bed.ts'
import type { FaultKindName } from '../../mechanism/fault-kinds.ts'
import { faultWords } from '../../words/faults.ts'
import { capital } from '../../words/parts.ts'

const bedAt = (kind: FaultKindName, look: Look | null): Preview['bed'] => {
  if (!look) throw new Error(`no look shows ${kind}, so it has no preview picture`)
  return { ...lookAt([exampleOf(kind)], look, patternCard), ...wholeBed }
}

const previewOf = (kind: FaultKindName): Preview => {
  const { title, shows } = faultWords[kind]
  return {
    title,
    shows: capital(shows),
    bed: bedAt(kind, plainestOf(kind, patternCard) ?? firstShown(kind, patternCard)),
  }
}

/** For all pages but the faults': every eighth needle missed of a bed that is asked for as a whole. */
const site = (): Preview => ({
  title: 'How a punched card selects needles',
  shows: 'One strip seized, and every eighth needle is missed',
  bed: bedAt('strip.seized', plainestOf('strip.seized', patternCard)),
})

/** A preview picture for every kind of fault, and one for all other pages. */
export const getStaticPaths: GetStaticPaths = async () => [
  { params: { slug: 'site' }, props: { preview: site() } },
  ...(await allFaults()).map(({ kind }) => ({
    params: { slug: faultSlug(kind) },
    props: { preview: previewOf(kind) },
  })),
]

export const GET: APIRoute<{ preview: Preview }> = async ({ props }) => {
  const png = await pngOf(await previewPicture(props.preview))
  return new Response(png, { headers: { 'Content-Type': 'image/png' } })
}
