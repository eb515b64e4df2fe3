import type { APIRoute, GetStaticPaths } from 'astro'
import { faultFiles } from '../../../site/fault-pictures.ts'
import { faultSlug } from '../../../site/faults.ts'

/** The pictures of what is broken, each once. */
export const getStaticPaths = (() =>
  [...faultFiles].map(([kind, text]) => ({
    params: { kind: faultSlug(kind) },
    props: { text },
  }))) satisfies GetStaticPaths

export const GET: APIRoute<{ text: string }> = ({ props: { text } }) =>
  new Response(text, { headers: { 'Content-Type': 'image/svg+xml' } })
