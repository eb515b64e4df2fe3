import { PrecacheController } from 'workbox-precaching'
import type { Kept, SiteFile } from './offline-messages.ts'
import type {} from './offline-scope.ts'

/** How many files are asked for at a time. */
const lanes = 4

/** The site's files on this device, in the one cache that Workbox keeps for the site's address. */
export interface Store {
  readonly controller: PrecacheController
  /** Keeps files that are not kept yet. Rejects where one can't be had as this version has it, or has no room. */
  readonly keep: (
    files: readonly SiteFile[],
    event: ExtendableEvent,
    kept?: (file: SiteFile) => void,
  ) => Promise<void>
  /** Those that are not kept yet, in their order. */
  readonly missing: (wanted: readonly SiteFile[]) => Promise<readonly SiteFile[]>
  /** The files of this version whose pages or pictures are kept, in whatever version. */
  readonly visited: () => Promise<readonly SiteFile[]>
  readonly count: () => Promise<Kept>
  /** Removes all but the files that every visit keeps. */
  readonly remove: () => Promise<void>
}

const hashed = /^_astro\//

/** The address without what Workbox adds to it for the version. */
const plain = (address: string): string => address.split('?')[0] ?? address

/**
 * The store of these files.
 * @param scope the site's own address
 * @param rescue what answers a page's request where a file is neither kept nor to be had as this version has it
 */
export const createStore = (
  files: readonly SiteFile[],
  scope: string,
  rescue: (event: Event, request: Request) => Promise<Response | undefined>,
): Store => {
  const controller = new PrecacheController({
    plugins: [{ handlerDidError: ({ event, request }) => rescue(event, request) }],
  })
  controller.addToCacheList(
    files.map(({ url, integrity }) => ({
      url,
      integrity,
      revision: hashed.test(url) ? null : integrity.slice('sha256-'.length).slice(0, 12),
    })),
  )
  // Each key is one file's, whatever the request for it looked like.
  controller.strategy.matchOptions = { ignoreVary: true }
  const addressOf = ({ url }: SiteFile): string => new URL(url, scope).href
  const keyOf = (file: SiteFile): string => controller.getCacheKeyForURL(addressOf(file)) ?? ''
  const open = (): Promise<Cache> => caches.open(controller.strategy.cacheName)
  const keys = async (): Promise<Set<string>> => new Set((await (await open()).keys()).map(({ url }) => url))

  const missing = async (wanted: readonly SiteFile[]): Promise<readonly SiteFile[]> => {
    const there = await keys()
    return wanted.filter((file) => !there.has(keyOf(file)))
  }

  return {
    controller,
    missing,
    async keep(wanted, event, kept) {
      const queue = (await missing(wanted)).values()
      const lane = async (): Promise<void> => {
        for (const file of queue) {
          const { integrity } = file
          const cache = hashed.test(file.url) ? 'default' : 'no-cache'
          const request = new Request(addressOf(file), { integrity, cache, credentials: 'same-origin' })
          const params = { cacheKey: keyOf(file), integrity }
          await Promise.all(controller.strategy.handleAll({ request, event, params }))
          kept?.(file)
        }
      }
      await Promise.all(Array.from({ length: lanes }, lane))
    },
    async visited() {
      const there = new Set([...(await keys())].map(plain))
      return files.filter((file) => !file.shell && there.has(addressOf(file)))
    },
    async count() {
      const there = await keys()
      const kept = files.filter((file) => there.has(keyOf(file)))
      const sum = (some: readonly SiteFile[]): number => some.reduce((all, { bytes }) => all + bytes, 0)
      return {
        files: kept.length,
        bytes: sum(kept),
        allFiles: files.length,
        allBytes: sum(files),
        chosenFiles: kept.filter(({ shell }) => !shell).length,
      }
    },
    async remove() {
      const cache = await open()
      for (const file of files) if (!file.shell) await cache.delete(keyOf(file))
    },
  }
}
