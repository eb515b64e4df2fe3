import { createStore, type Store } from '../../browser/store.ts'
import type { Job } from '../../link/job.ts'
import type { Keeping, Photo, Shelf } from './shelf.ts'
import { forgetUnkept, noteUnkept } from './unkept.ts'

/** Who changes the job on the page: a hand, or another window that has kept it. */
type By = 'hand' | 'elsewhere'

/** The job on the page. */
export interface JobStore {
  readonly now: () => Job
  /** Changes the job; pictures that are new go with it. */
  readonly set: (change: Partial<Job>, photos?: readonly Photo[]) => void
  readonly listen: Store<Job, By>['listen']
  /** Keeps at once what is still waiting to be kept. */
  readonly flush: () => Promise<void>
  /** Whether anything is not kept yet that a page closed now would lose: a picture, or what the browser refused. */
  readonly isWaiting: () => boolean
  /** Stops following other windows. */
  readonly close: () => void
}

/** How the page hears of keeping. */
interface Hears {
  readonly kept: (how: Keeping) => void
}

const channelName = 'every-eighth-needle-jobs'

interface Message {
  readonly id: number
}

/** A time that is later than another, so that two changes in one millisecond differ. */
const after = (before: string, now: number): string =>
  new Date(Math.max(now, Date.parse(before) + 1)).toISOString()

/**
 * A job that is kept as it changes: at once where nothing is being kept, else when that is done. What another window
 * keeps is shown here, unless something here still waits to be kept.
 */
export const createJobStore = (first: Job, isNew: boolean, shelf: Shelf, { kept }: Hears): JobStore => {
  const store = createStore<Job, By>(first, 'hand')
  const channel = 'BroadcastChannel' in globalThis ? new BroadcastChannel(channelName) : null
  let base = isNew ? null : first.changed
  let pictures: readonly Photo[] = []
  let isChanged = false
  let keeping: Promise<void> = Promise.resolve()
  const keepNow = async (): Promise<void> => {
    if (!isChanged) return
    isChanged = false
    const job = store.now()
    const photos = pictures
    const how = await shelf.keep(job, base, photos)
    if (how === 'kept') {
      base = job.changed
      pictures = pictures.filter((one) => !photos.includes(one))
      if (store.now().changed === job.changed) forgetUnkept(job.id)
      channel?.postMessage({ id: job.id } satisfies Message)
    } else isChanged = true
    kept(how)
  }
  const flush = (): Promise<void> => {
    keeping = keeping.then(keepNow)
    return keeping
  }
  channel?.addEventListener('message', ({ data }: MessageEvent<Message>) => {
    if (data.id !== first.id || isChanged) return
    void shelf.get(first.id).then((reading) => {
      if (reading?.kind !== 'job' || isChanged) return
      base = reading.job.changed
      store.set(reading.job, 'elsewhere')
    })
  })
  return {
    now: store.now,
    set: (change, photos = []) => {
      store.set({ ...store.now(), ...change, changed: after(store.now().changed, Date.now()) })
      pictures = [...pictures, ...photos]
      isChanged = true
      noteUnkept({ job: store.now(), base })
      void flush()
    },
    listen: store.listen,
    flush,
    isWaiting: () => isChanged || pictures.length > 0,
    close: () => channel?.close(),
  }
}
