import type { Job } from '../../link/job.ts'
import { createJobStore, type JobStore } from './job-store.ts'
import type { Keeping, Shelf } from './shelf.ts'

/** The job that the page shows, whichever it is: its sections are made once and follow it. */
export interface CurrentJob extends Pick<JobStore, 'now' | 'set' | 'flush' | 'isWaiting'> {
  /** The number of the job on the page; null for none. */
  readonly id: () => number | null
  readonly open: (job: Job, isNew: boolean) => void
  /** Lets go of the job without keeping it. */
  readonly drop: () => void
}

/** Makes it; `changed` is called at each change of the job, `kept` with what came of keeping it. */
export const createCurrentJob = (
  shelf: Shelf,
  changed: () => void,
  kept: (how: Keeping) => void,
): CurrentJob => {
  let store: JobStore | null = null
  const open = (): JobStore => {
    if (!store) throw new Error('no job is open')
    return store
  }
  const drop = (): void => {
    store?.close()
    store = null
  }
  return {
    id: () => store?.now().id ?? null,
    now: () => open().now(),
    set: (change, photos) => {
      open().set(change, photos)
    },
    flush: () => store?.flush() ?? Promise.resolve(),
    isWaiting: () => store?.isWaiting() ?? false,
    open: (job, isNew) => {
      drop()
      store = createJobStore(job, isNew, shelf, { kept })
      store.listen(changed)
    },
    drop,
  }
}
