import { PrecacheRoute } from 'workbox-precaching'
import { registerRoute } from 'workbox-routing'
import type { Answer, SiteFile, Trouble } from './offline-messages.ts'
import { createStore } from './offline-store.ts'
import type { WorkerScope } from './offline-scope.ts'

declare const self: WorkerScope
/** Stands for the list of all files of this version, which the build puts in its place. */
declare const builtFiles: readonly SiteFile[]

const siteFiles = builtFiles
const { scope } = self.registration

/** While a cache of this name is there, the whole site is to be kept, in later versions too. */
const wholeMark = `whole site ${scope}`

/** The page that says what is kept: it is shown in place of a page that is not. */
const standIn = 'offline/'

/** Stands in a page for a picture that is not kept. */
const pictureStandIn = (): Response =>
  new Response(
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 80"><text x="300" y="46" text-anchor="middle" font-family="sans-serif" font-size="22" fill="#777">This picture is not kept on this device.</text></svg>',
    { headers: { 'Content-Type': 'image/svg+xml' } },
  )

const rescue = async (event: Event, request: Request): Promise<Response | undefined> => {
  if (event.type !== 'fetch') return undefined
  try {
    return await fetch(request)
  } catch (error) {
    const page = request.mode === 'navigate' ? await store.controller.matchPrecache(standIn) : undefined
    if (page) return page
    if (request.destination === 'image') return pictureStandIn()
    throw error
  }
}

const store = createStore(siteFiles, scope, rescue)

registerRoute(
  new PrecacheRoute(store.controller, {
    ignoreURLParametersMatching: [/./],
    cleanURLs: false,
    urlManipulation: ({ url }) => [new URL(`${url.pathname}/`, scope)],
  }),
)

// A page of the version before may still ask for a part of its own that it had no need of until now.
registerRoute(
  ({ url, sameOrigin }) => sameOrigin && url.href.startsWith(`${scope}_astro/`),
  async ({ request }) => (await caches.match(request, { ignoreVary: true })) ?? fetch(request),
)

/** The page that hosts send for an address that the site does not have. */
const unknownAddress = '404.html'

// No page of the site: its host says so, and without a network the worker does.
registerRoute(
  ({ request, sameOrigin }) => sameOrigin && request.mode === 'navigate',
  async ({ request }) => {
    try {
      return await fetch(request)
    } catch (error) {
      const page = await store.controller.matchPrecache(unknownAddress)
      if (!page) throw error
      return new Response(page.body, { status: 404, headers: page.headers })
    }
  },
)

const shell = siteFiles.filter(({ shell: isShell }) => isShell)

/** Brings what the version before kept beside the shell. What can't be had now is brought when it is opened. */
const bringAlong = async (event: ExtendableEvent): Promise<void> => {
  const wanted = (await caches.has(wholeMark)) ? siteFiles : await store.visited()
  await store.keep(wanted, event).catch(() => undefined)
}

/** Lets go of the version before once no page of it can be open any more. */
const tidy = async (event: ExtendableEvent): Promise<void> => {
  const pages = await self.clients.matchAll({ type: 'window', includeUncontrolled: true })
  if (pages.length < 2) await store.controller.activate(event)
}

/** Keeps what a page that is open consists of, the first of all included, which came without the worker. */
const keepOpened = async (addresses: readonly string[], event: ExtendableEvent): Promise<void> => {
  const opened = new Set(addresses.map((address) => address.split(/[?#]/)[0]))
  const files = siteFiles.filter(({ url }) => opened.has(new URL(url, scope).href))
  await store.keep(files, event).catch(() => undefined)
  await tidy(event)
}

const troubleOf = (error: unknown): Trouble =>
  error instanceof Error && error.name === 'QuotaExceededError' ? 'full' : 'unreached'

/** How many files are kept at one wish: a browser ends a worker that takes minutes over one. */
const portion = 24

/** Keeps the next portion of the whole site and reports how far it has come. */
const keepMore = async (event: ExtendableEvent, tell: (answer: Answer) => void): Promise<void> => {
  await caches.open(wholeMark)
  const kept = await store.count()
  let { files, bytes } = kept
  await store.keep((await store.missing(siteFiles)).slice(0, portion), event, (file) => {
    files += 1
    bytes += file.bytes
    tell({ kept: { ...kept, files, bytes }, isDone: false, trouble: null })
  })
}

self.addEventListener('install', (event) => {
  event.waitUntil(store.keep(shell, event).then(() => bringAlong(event)))
})

self.addEventListener('activate', (event) => {
  event.waitUntil(self.clients.claim())
})

self.addEventListener('message', (event) => {
  const { data } = event
  const tell = (answer: Answer): void => event.ports[0]?.postMessage(answer)
  const end = async (trouble: Trouble | null): Promise<void> =>
    tell({ kept: await store.count(), isDone: true, trouble })
  const work = async (): Promise<void> => {
    if (data.kind === 'use') return self.skipWaiting()
    if (data.kind === 'here') return keepOpened(data.addresses, event)
    if (data.kind === 'keep') await keepMore(event, tell)
    if (data.kind === 'remove') {
      await caches.delete(wholeMark)
      await store.remove()
    }
    await end(null)
  }
  event.waitUntil(work().catch((error: unknown) => end(troubleOf(error))))
})
