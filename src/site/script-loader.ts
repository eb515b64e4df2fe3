import { createHash } from 'node:crypto'

/**
 * What stands at the end of a page and fetches its scripts once the page is drawn with its letters, so that they take
 * nothing from its way to the screen. A page that is not looked at is never drawn: there they are fetched at once.
 */
const later = `{
  const load = async () => {
    const scripts = [...document.querySelectorAll('script[type=later]')]
    for (const { src, dataset } of scripts)
      for (const href of [src, ...dataset.with.split(' ').filter(Boolean)])
        document.head.append(Object.assign(document.createElement('link'), { rel: 'modulepreload', href }))
    for (const { src } of scripts) await import(src)
  }
  if (document.hidden) load()
  else document.fonts.ready.then(() => requestAnimationFrame(() => requestAnimationFrame(load)))
}`.replace(/\n\s*/g, '\n')

/** The loader as it stands in a page; the page's first drawing waits until its end is there (Page.astro). */
export const loader = `<script id="end">${later}</script>`

/** By which a page's policy knows a script that stands in it. */
export const hashOf = (script: string): `sha256-${string}` =>
  `sha256-${createHash('sha256').update(script).digest('base64')}`

export const loaderHash = hashOf(later)
