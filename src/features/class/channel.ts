import { channelName, type ClassStore, newSession, openChannel, readClassState } from './state.ts'
import { claimed, lastTurn, marked, markedAll, merged, readMarks, type Stamped, unmarked } from './last-writer-wins.ts'

/** What a class's windows speak through: the browser's own channel, or a test's. */
export type Channel = Pick<
  BroadcastChannel,
  'postMessage' | 'addEventListener' | 'removeEventListener' | 'close'
>

interface Options {
  readonly open?: (name: string) => Channel
  /** Called whenever another window of the class is heard. */
  readonly heard?: () => void
}

/** What to say where windows can't be kept in step; undefined where they can. */
export const channelTrouble = (): string | undefined => {
  const channel = openChannel('')
  channel?.close()
  return channel ? undefined : 'This browser can’t keep two windows in step, so turn each of them yourself.'
}

type Message = { readonly kind: 'ask' } | ({ readonly kind: 'tell' } & Stamped)

/** Reads what came over the channel; undefined for anything that no window of ours says. */
const readMessage = (value: unknown): Message | undefined => {
  const given = (value ?? {}) as Partial<Record<'kind' | keyof Stamped, unknown>>
  if (given.kind === 'ask') return { kind: 'ask' }
  const [state, marks] = [readClassState(given.state), readMarks(given.marks)]
  return given.kind === 'tell' && state && marks ? { kind: 'tell', state, marks } : undefined
}

/**
 * Keeps this window's class in step with all other windows of the same id, both ways, until the function that it gives
 * is called. A window that comes late asks, and takes what the others show; but the chapter is that of the page opened
 * last.
 */
export const joinClass = (store: ClassStore, id: string, options: Options = {}): (() => void) => {
  const channel = options.open ? options.open(channelName(id)) : openChannel(id)
  if (!channel) return () => undefined
  const window = newSession()
  let known: Stamped = { state: store.state(), marks: unmarked }
  let isNew = true

  const tell = (): void => {
    channel.postMessage({ kind: 'tell', ...known } satisfies Message)
  }
  const stamp = (above = 0): { turn: number; window: string } => ({
    turn: Math.max(above, lastTurn(known.marks)) + 1,
    window,
  })
  // Whatever differs from what was known was done here: changes that come from there are known before they are set.
  const notice = (): void => {
    const state = store.state()
    const marks = marked(known.state, state, known.marks, stamp())
    if (marks === known.marks) return
    known = { state, marks }
    tell()
  }
  const take = (theirs: Stamped): void => {
    const leads = isNew && theirs.state.chapter !== known.state.chapter
    isNew = false
    if (leads) {
      known = { ...known, marks: markedAll(stamp(lastTurn(theirs.marks))) }
      tell()
      return
    }
    known = merged(known, theirs)
    store.set(known.state, 'there')
  }
  const hear = ({ data }: MessageEvent<unknown>): void => {
    const message = readMessage(data)
    if (!message) return
    options.heard?.()
    if (message.kind === 'tell') {
      take(message)
      return
    }
    isNew = false
    // Where nobody has done anything yet, the window that was here first is right.
    known = { ...known, marks: claimed(known.marks, window) }
    tell()
  }
  channel.addEventListener('message', hear)
  const leave = store.subscribe(notice)
  channel.postMessage({ kind: 'ask' } satisfies Message)
  return () => {
    leave()
    channel.removeEventListener('message', hear)
    channel.close()
  }
}
