import { allWrittenAt, claimUnwritten, latestCounter, merge, neverWritten } from './last-writer-wins.ts'
import { parseTimes, type TimedState, type Timestamp, timesAfter } from './last-writer-wins.ts'
import { parseClassState } from './parse-state.ts'
import { channelName, newSession, openChannel } from './session.ts'
import type { ClassStore } from './state.ts'
import { needleName, usualPlace } from '../../../mechanism/bed.ts'

/** What a class's windows exchange messages through: the browser's own channel, or a test's. */
export type Channel = Pick<
  BroadcastChannel,
  'postMessage' | 'addEventListener' | 'removeEventListener' | 'close'
>

/** The needle of column 1 where nobody has said which it is. */
const usualFirst = needleName(usualPlace.columnOne)

interface Options {
  readonly open?: (name: string) => Channel
  /** Called whenever a message of another window of the class arrives. */
  readonly heard?: () => void
}

/** A sentence for browsers that can't keep windows in step; undefined in those that can. */
export const channelTrouble = (): string | undefined => {
  const channel = openChannel('')
  channel?.close()
  return channel ? undefined : 'This browser can’t keep two windows in step, so turn each of them yourself.'
}

/** A window that opens requests the state; a window's state is sent in answer, and at every change made in it. */
export type ClassMessage = { readonly kind: 'request' } | ({ readonly kind: 'state' } & TimedState)

/** Parses what came over the channel; undefined for anything that is not a message of a class's window. */
const parseMessage = (value: unknown): ClassMessage | undefined => {
  const given = (value ?? {}) as Partial<Record<'kind' | keyof TimedState, unknown>>
  if (given.kind === 'request') return { kind: 'request' }
  const [state, times] = [parseClassState(given.state), parseTimes(given.times)]
  return given.kind === 'state' && state && times ? { kind: 'state', state, times } : undefined
}

/**
 * Keeps this window's class in step with all other windows of the same id, both ways, until the returned function is
 * called. A window that opens later requests the state and takes what the others show; but the chapter is that of the
 * page opened last, which keeps the class's needle of column 1.
 */
export const joinClass = (store: ClassStore, id: string, options: Options = {}): (() => void) => {
  const channel = options.open ? options.open(channelName(id)) : openChannel(id)
  if (!channel) return () => undefined
  const window = newSession()
  let known: TimedState = { state: store.state(), times: neverWritten }
  let isNew = true

  const post = (message: ClassMessage): void => {
    channel.postMessage(message)
  }
  const send = (): void => {
    post({ kind: 'state', ...known })
  }
  const nextTime = (above = 0): Timestamp => ({
    counter: Math.max(above, latestCounter(known.times)) + 1,
    window,
  })
  // Whatever differs from what is known was changed here: remote changes are known before they are set.
  const sendChange = (): void => {
    const state = store.state()
    const times = timesAfter(known.state, state, known.times, nextTime())
    if (times === known.times) return
    known = { state, times }
    send()
  }
  const receive = (theirs: TimedState): void => {
    const leads = isNew && theirs.state.chapter !== known.state.chapter
    isNew = false
    if (leads) {
      const { first } = known.state.first === usualFirst ? theirs.state : known.state
      known = {
        state: { ...known.state, first },
        times: allWrittenAt(nextTime(latestCounter(theirs.times))),
      }
      store.set({ first }, 'remote')
      send()
      return
    }
    known = merge(known, theirs)
    store.set(known.state, 'remote')
  }
  const hear = ({ data }: MessageEvent<unknown>): void => {
    const message = parseMessage(data)
    if (!message) return
    options.heard?.()
    switch (message.kind) {
      case 'state':
        receive(message)
        return
      case 'request':
        isNew = false
        // Where nobody has done anything yet, the window that was here first is right.
        known = { ...known, times: claimUnwritten(known.times, window) }
        send()
    }
  }
  channel.addEventListener('message', hear)
  const unsubscribe = store.subscribe(sendChange)
  post({ kind: 'request' })
  return () => {
    unsubscribe()
    channel.removeEventListener('message', hear)
    channel.close()
  }
}
