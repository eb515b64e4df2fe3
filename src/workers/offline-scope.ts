import type { Wish } from './offline-messages.ts'

declare global {
  /** What happens to a worker and lasts until a promise is kept: Workbox's types mean it by this name. */
  interface ExtendableEvent extends Event {
    readonly waitUntil: (promise: Promise<unknown>) => void
  }
}

/** A page's words to the worker. */
interface WishEvent extends ExtendableEvent {
  readonly data: Wish
  readonly ports: readonly MessagePort[]
}

/** The part of a service worker's world that this site's uses: the page's types have none of it. */
export interface WorkerScope {
  readonly registration: ServiceWorkerRegistration
  readonly clients: {
    readonly claim: () => Promise<void>
    readonly matchAll: (options: {
      readonly type: 'window'
      readonly includeUncontrolled: boolean
    }) => Promise<readonly unknown[]>
  }
  readonly skipWaiting: () => Promise<void>
  readonly addEventListener: {
    (kind: 'install' | 'activate', hear: (event: ExtendableEvent) => void): void
    (kind: 'message', hear: (event: WishEvent) => void): void
  }
}
