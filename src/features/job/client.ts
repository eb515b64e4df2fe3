import type { JobAnswer, JobAsk, JobAsks } from '../../workers/job-messages.ts'

/** Asks the job's worker; rejects where this browser can't run it. */
export interface JobClient {
  readonly ask: <Ask extends JobAsk>(ask: Ask, about: JobAsks[Ask]['asks']) => Promise<JobAsks[Ask]['gets']>
  /** Resolves once nothing is being computed. */
  readonly idle: () => Promise<void>
}

/** Starts the worker when it is first asked. */
export const createJobClient = (): JobClient => {
  let worker: Worker | null = null
  let id = 0
  const waiting = new Map<number, { resolve: (answer: never) => void; reject: () => void }>()
  const start = (): Worker => {
    const made = new Worker(new URL('../../workers/job.ts', import.meta.url), { type: 'module' })
    made.addEventListener('message', ({ data }: MessageEvent<JobAnswer>) => {
      waiting.get(data.id)?.resolve(data.answer as never)
      waiting.delete(data.id)
    })
    made.addEventListener('error', () => {
      for (const { reject } of waiting.values()) reject()
      waiting.clear()
    })
    return made
  }
  let all: Promise<unknown> = Promise.resolve()
  return {
    ask: (ask, about) => {
      const answer = new Promise<never>((resolve, reject) => {
        worker ??= start()
        id++
        waiting.set(id, {
          resolve,
          reject: () => {
            reject(new Error('the worker of jobs has failed'))
          },
        })
        worker.postMessage({ id, ask, about })
      })
      all = Promise.allSettled([all, answer])
      return answer
    },
    idle: async () => {
      await all
    },
  }
}
