import { readFileSync } from 'node:fs'
import { root } from 'astro:config/server'
import type { APIRoute, GetStaticPaths } from 'astro'
import { type IconKind, iconKinds, iconPicture, iconSizes } from '../../components/offline/icon.ts'
import { pngOf } from '../../components/preview/renderer.ts'

export const getStaticPaths = (() =>
  iconKinds.flatMap((kind) =>
    iconSizes.map((size) => ({ params: { name: `${kind}-${size}` }, props: { kind, size } })),
  )) satisfies GetStaticPaths

export const GET: APIRoute<{ kind: IconKind; size: number }> = async ({ props: { kind, size } }) => {
  const source = readFileSync(new URL('public/icon.svg', root), 'utf8')
  return new Response(await pngOf(iconPicture(source, kind, size)), {
    headers: { 'Content-Type': 'image/png' },
  })
}
