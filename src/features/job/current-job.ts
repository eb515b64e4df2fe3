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
  let isOpen = false
  const open = (): JobStore => {
    if (!store) throw new Error('no job was opened')
    return store
  }
  // What was asked while it was open may still be answered: so it can be read, but is kept no more.
  const drop = (): void => {
    store?.close()
    isOpen = false
  }
  return {
    id: () => (isOpen ? open().now().id : null),
    now: () => open().now(),
    set: (change, photos) => {
      if (isOpen) open().set(change, photos)
    },
    flush: () => (isOpen ? open().flush() : Promise.resolve()),
    isWaiting: () => isOpen && open().isWaiting(),
    open: (job, isNew) => {
      drop()
      store = createJobStore(job, isNew, shelf, { kept })
      store.listen(changed)
      isOpen = true
    },
    drop,
  }
}
