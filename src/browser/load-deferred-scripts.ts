import { yieldToBrowser } from './yield-to-browser.ts'

/** How many files are asked for at once: on a slow phone asking for many takes long. */
const atOnce = 6

/**
 * Runs at the end of a page and fetches its scripts once the page is drawn with its fonts, so that they take nothing from
 * its way to the screen. A page that is not looked at is never drawn: there they are fetched at once.
 */
const load = async (): Promise<void> => {
  const scripts = [...document.querySelectorAll<HTMLScriptElement>('script[type=deferred]')]
  const addresses = scripts.flatMap(({ src, dataset }) => [
    src,
    ...(dataset['with'] ?? '').split(' ').filter(Boolean),
  ])
  for (const [n, href] of [...new Set(addresses)].entries()) {
    if (n > 0 && n % atOnce === 0) await yieldToBrowser()
    document.head.append(Object.assign(document.createElement('link'), { rel: 'modulepreload', href }))
  }
  for (const { src } of scripts) await import(src)
}
if (document.hidden) void load()
else
  void document.fonts.ready.then(() => requestAnimationFrame(() => requestAnimationFrame(() => void load())))
