import type { Channel } from './channel.ts'
import { type ClassStore, openChannel } from './state.ts'

/** A channel that first hands on what was heard before anybody listened. */
const replaying = (
  channel: Channel,
  heard: readonly MessageEvent<unknown>[],
  before: () => void,
): Channel => ({
  postMessage: (message) => {
    channel.postMessage(message)
  },
  addEventListener: (type: string, listener: EventListener) => {
    before()
    for (const event of heard) listener(event)
    channel.addEventListener(type, listener)
  },
  removeEventListener: (type: string, listener: EventListener) => {
    channel.removeEventListener(type, listener)
  },
  close: () => {
    channel.close()
  },
})

/**
 * Joins a class as soon as another window of it is heard, and asks whether there is one. What keeps windows in step is
 * only fetched then: most classes have one window, and it opens the sooner.
 */
export const joinLate = (store: ClassStore, id: string): void => {
  const channel = openChannel(id)
  if (!channel) return
  const heard: MessageEvent<unknown>[] = []
  const hear = (event: MessageEvent<unknown>): void => {
    heard.push(event)
    if (heard.length > 1) return
    void import('./channel.ts').then(({ joinClass }) => {
      const open = (): Channel =>
        replaying(channel, heard, () => {
          channel.removeEventListener('message', hear)
        })
      joinClass(store, id, { open })
    })
  }
  channel.addEventListener('message', hear)
  channel.postMessage({ kind: 'ask' })
}
