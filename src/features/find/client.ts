import type { WorkerMessage, WorkerQuestion } from '../../find/messages.ts'
import type { Query } from '../../find/query.ts'

type CourseQuestion = Omit<Extract<WorkerQuestion, { kind: 'course' }>, 'kind'>

/** The worker, as the page asks it. */
export interface Client {
  readonly infer: (query: Query) => void
  readonly course: (question: CourseQuestion) => void
}

/** Asks the worker, one query at a time: while it works, only the latest query waits. `fail` is called where it can't work. */
export const createClient = (hear: (message: WorkerMessage) => void, fail: () => void): Client => {
  const worker = new Worker(new URL('../../workers/find.ts', import.meta.url), { type: 'module' })
  worker.addEventListener('error', fail)
  let id = 0
  let isBusy = false
  let waiting: Query | null = null
  const post = (question: WorkerQuestion): void => {
    worker.postMessage(question)
  }
  const send = (query: Query): void => {
    isBusy = true
    post({ kind: 'infer', id: ++id, query })
  }
  worker.addEventListener('message', ({ data }: MessageEvent<WorkerMessage>) => {
    // An answer to an older query is still worth showing while the next one is computed.
    if (data.kind !== 'next' || !waiting) hear(data)
    if (data.kind !== 'next') return
    isBusy = false
    if (!waiting) return
    const next = waiting
    waiting = null
    send(next)
  })
  return {
    infer: (query) => {
      if (isBusy) waiting = query
      else send(query)
    },
    course: (question) => {
      post({ kind: 'course', ...question })
    },
  }
}
