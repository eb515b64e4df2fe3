import { base } from '../../link/site-path.ts'
import type { Wish } from '../../workers/offline-messages.ts'

/** Whether this browser, here, can have a worker at all: not from files, and not without https. */
export const canKeep = location.protocol.startsWith('http') && 'serviceWorker' in navigator

/** Tells the worker something that wants no answer. */
export const wish = (worker: ServiceWorker | null, said: Wish): void => worker?.postMessage(said)

const loaded = (): Promise<void> =>
  new Promise((done) => {
    if (document.readyState === 'complete') done()
    else addEventListener('load', () => done(), { once: true })
  })

/** How long a page has the device to itself when it is the first of a visit, in ms: the worker's fetching is work too. */
const settling = 3000

let hurry: () => void = () => undefined
const hurried = new Promise<void>((done) => (hurry = done))

/** Registers the worker without waiting for the page to settle, for a reader who came to ask about it. */
export const registerNow = (): void => hurry()

/** Until the page has what it needs and has settled. On a later page of a visit the worker is there and at work. */
const settled = async (): Promise<void> => {
  await loaded()
  if (navigator.serviceWorker.controller) return
  await Promise.race([hurried, new Promise((done) => setTimeout(done, settling))])
}

/** Addresses of the page, of the pictures in it and in its drawings, and of the pages that its sheets come from. */
const addressesHere = (): string[] => [
  location.href,
  ...[...document.images].map(({ src }) => src),
  ...[...document.querySelectorAll<SVGImageElement>('svg image')].map(
    ({ href }) => new URL(href.baseVal, location.href).href,
  ),
  ...[...document.querySelectorAll<HTMLElement>('[data-from]')].map(
    ({ dataset }) => new URL(dataset.from ?? '', location.href).href,
  ),
]

/** Registers the worker once the page has settled. Null where the browser has none, or refuses. */
const register = async (): Promise<ServiceWorkerRegistration | null> => {
  if (!import.meta.env.PROD || !canKeep) return null
  await settled()
  try {
    return await navigator.serviceWorker.register(`${base}/sw.js`, {
      scope: `${base}/`,
      updateViaCache: 'none',
    })
  } catch {
    return null
  }
}

/** The site's worker, the same for all who ask on a page. */
export const registered: Promise<ServiceWorkerRegistration | null> = register()

/** Lets the worker keep the page that is open. */
export const keepThisPage = async (): Promise<void> => {
  if (!(await registered)) return
  const { active } = await navigator.serviceWorker.ready
  wish(active, { kind: 'here', addresses: addressesHere() })
}
