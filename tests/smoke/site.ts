import { type OwnServer, serveSite } from '../browser/own-server.ts'

/** Notes, from the first line of a page on, what no page of the site may do: complain, fail, or break its own policy. */
const watch = (): void => {
  const wrongs: string[] = []
  Object.assign(window, { wrongs })
  const note = (what: string): void => {
    wrongs.push(what)
  }
  addEventListener(
    'error',
    ({ message, target }: Partial<ErrorEvent>) => {
      // Firefox says so of a module that it has already; one that is really missing is a rejection besides.
      if (target instanceof HTMLLinkElement && target.rel === 'modulepreload') return
      note(message ?? `not loaded: ${target instanceof Element ? target.outerHTML : ''}`)
    },
    true,
  )
  addEventListener('unhandledrejection', ({ reason }) => note(String(reason)))
  addEventListener('securitypolicyviolation', ({ blockedURI, violatedDirective }) =>
    note(`${violatedDirective} stopped ${blockedURI}`),
  )
  for (const way of ['error', 'warn'] as const) {
    const say = console[way].bind(console)
    console[way] = (...words: unknown[]) => {
      note(words.map(String).join(' '))
      say(...words)
    }
  }
}

/** Serves the built site with a watch in each page, before the page's own policy forbids such a script. */
export const serveWatched = async (): Promise<OwnServer> => {
  const site = await serveSite('/')
  const script = `<head><script>(${watch.toString()})()</script>`
  site.change((name, text) => (name.endsWith('.html') ? text.toString().replace('<head>', script) : text))
  return site
}
