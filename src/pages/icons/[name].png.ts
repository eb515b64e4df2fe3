import type { APIRoute, GetStaticPaths } from 'astro'
import { type IconKind, iconKinds, iconPicture, iconSizes, iconSource } from '../../site/icon.ts'
import { pngOf } from '../../site/preview/renderer.ts'

export const getStaticPaths = (() =>
  iconKinds.flatMap((kind) =>
    iconSizes.map((size) => ({ params: { name: `${kind}-${size}` }, props: { kind, size } })),
  )) satisfies GetStaticPaths

export const GET: APIRoute<{ kind: IconKind; size: number }> = async ({ props: { kind, size } }) => {
  return new Response(await pngOf(iconPicture(iconSource, kind, size)), {
    headers: { 'Content-Type': 'image/png' },
  })
}
