import type { Channel, ClassMessage } from './shared/channel.ts'
import { openChannel } from './shared/session.ts'
import type { ClassStore } from './shared/state.ts'

/** A channel that first replays to its listener the messages that arrived before there was one. */
const replaying = (
  channel: Channel,
  early: readonly MessageEvent<unknown>[],
  before: () => void,
): Channel => ({
  postMessage: (message) => {
    channel.postMessage(message)
  },
  addEventListener: (type: string, listener: EventListener) => {
    before()
    for (const event of early) listener(event)
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
 * Joins a class as soon as a message of another window of it arrives, and asks whether there is one. The code that keeps
 * windows in step is only fetched then: most classes have one window, and it opens sooner without that code.
 */
export const joinLazily = (store: ClassStore, id: string): void => {
  const channel = openChannel(id)
  if (!channel) return
  const early: MessageEvent<unknown>[] = []
  const hear = (event: MessageEvent<unknown>): void => {
    early.push(event)
    if (early.length > 1) return
    void import('./shared/channel.ts').then(({ joinClass }) => {
      const open = (): Channel =>
        replaying(channel, early, () => {
          channel.removeEventListener('message', hear)
        })
      joinClass(store, id, { open })
    })
  }
  channel.addEventListener('message', hear)
  channel.postMessage({ kind: 'request' } satisfies ClassMessage)
}
