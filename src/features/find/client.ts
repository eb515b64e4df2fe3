import type { Ask, CourseAsk, Told } from './messages.ts'

/** The worker, as the page asks it. */
export interface Client {
  readonly ask: (ask: Omit<Ask, 'id'>) => void
  readonly course: (ask: CourseAsk) => void
}

/** Asks the worker, one question at a time: while it works, only the latest of what is asked waits. `fail` is called where it can't work. */
export const createClient = (hear: (told: Told) => void, fail: () => void): Client => {
  const worker = new Worker(new URL('../../workers/find.ts', import.meta.url), { type: 'module' })
  worker.addEventListener('error', fail)
  let id = 0
  let isBusy = false
  let waiting: Omit<Ask, 'id'> | null = null
  const send = (ask: Omit<Ask, 'id'>): void => {
    isBusy = true
    worker.postMessage({ ...ask, id: ++id } satisfies Ask)
  }
  worker.addEventListener('message', ({ data }: MessageEvent<Told>) => {
    // An answer to an older question is still worth showing while the next one is worked out.
    if (data.kind !== 'advised' || !waiting) hear(data)
    if (data.kind !== 'advised') return
    isBusy = false
    if (!waiting) return
    const next = waiting
    waiting = null
    send(next)
  })
  return {
    ask: (ask) => {
      if (isBusy) waiting = ask
      else send(ask)
    },
    course: (ask) => {
      worker.postMessage(ask)
    },
  }
}
