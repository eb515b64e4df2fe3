import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import { type Job, type JobReading, readJob } from '../../link/job.ts'

/** A picture of a job, as it is kept: a JPEG without anything but the picture. */
export interface Photo {
  readonly id: number
  readonly job: number
  readonly jpeg: Blob
}

interface Jobs extends DBSchema {
  jobs: { key: number; value: unknown }
  photos: { key: number; value: Photo; indexes: { job: number } }
}

/** The name and the number of the database. A change of its shape raises the number and adds a step to `upgrade`. */
const database = { name: 'every-eighth-needle-jobs', version: 1 } as const

/** Why jobs can't be kept: the browser denies it, or a later version of the site has kept them in its own way. */
export type ShelfTrouble = 'denied' | 'later'

/** What came of keeping a job: kept; no room; changed elsewhere since it was read; or the browser refused. */
export type Keeping = 'kept' | 'full' | 'changed-elsewhere' | 'refused'

/** Where jobs are kept: on this device only. */
export interface Shelf {
  /** Null where they are kept; else why not: they then last as long as the page. */
  readonly trouble: ShelfTrouble | null
  /** All jobs, each as it was read. */
  readonly all: () => Promise<readonly JobReading[]>
  readonly get: (id: number) => Promise<JobReading | null>
  /**
   * Keeps a job whole or not at all, with pictures that are new. `base` is the time of change of the job that was read
   * before; null for a new one.
   */
  readonly keep: (job: Job, base: string | null, photos?: readonly Photo[]) => Promise<Keeping>
  readonly remove: (id: number) => Promise<void>
  readonly photos: (job: number) => Promise<readonly Photo[]>
}

/** A shelf that lasts as long as the page. */
const memoryShelf = (trouble: ShelfTrouble): Shelf => {
  const jobs = new Map<number, Job>()
  const pictures = new Map<number, Photo>()
  const reading = (job: Job): JobReading => ({ kind: 'job', job })
  return {
    trouble,
    all: () => Promise.resolve([...jobs.values()].map(reading)),
    get: (id) => {
      const found = jobs.get(id)
      return Promise.resolve(found ? reading(found) : null)
    },
    keep: (job, _, photos = []) => {
      jobs.set(job.id, job)
      for (const photo of photos) pictures.set(photo.id, photo)
      return Promise.resolve('kept')
    },
    remove: (id) => {
      jobs.delete(id)
      return Promise.resolve()
    },
    photos: (id) => Promise.resolve([...pictures.values()].filter(({ job }) => job === id)),
  }
}

const changedOf = (value: unknown): unknown =>
  typeof value === 'object' && value !== null && 'changed' in value ? value.changed : null

const keepingOf = (error: unknown): Keeping =>
  error instanceof DOMException && error.name === 'QuotaExceededError' ? 'full' : 'refused'

const keepIn = async (
  db: IDBPDatabase<Jobs>,
  job: Job,
  base: string | null,
  photos: readonly Photo[],
): Promise<Keeping> => {
  const change = db.transaction(['jobs', 'photos'], 'readwrite')
  // Whatever ends the change early is caught here once.
  const done = change.done.then(
    () => null,
    (error: unknown) => error,
  )
  try {
    const before: unknown = await change.objectStore('jobs').get(job.id)
    const isThis = changedOf(before) === job.changed
    const isOther = base === null ? before !== undefined : changedOf(before) !== base
    if (isOther && !isThis) return 'changed-elsewhere'
    for (const photo of photos) await change.objectStore('photos').put(photo)
    const wanted = new Set(job.photos.map(({ id }) => id))
    for (const id of await change.objectStore('photos').index('job').getAllKeys(job.id))
      if (!wanted.has(id)) await change.objectStore('photos').delete(id)
    await change.objectStore('jobs').put(job, job.id)
    const error = await done
    return error === null ? 'kept' : keepingOf(error)
  } catch (error) {
    try {
      change.abort()
    } catch {
      // It has ended by itself.
    }
    return keepingOf(error)
  }
}

/** Opens the jobs of this device. Never rejects: where they can't be kept, they last as long as the page. */
export const openShelf = async (): Promise<Shelf> => {
  try {
    const db = await openDB<Jobs>(database.name, database.version, {
      upgrade: (made) => {
        made.createObjectStore('jobs')
        made.createObjectStore('photos', { keyPath: 'id' }).createIndex('job', 'job')
      },
      blocking: (_, __, event) => {
        // A page of a later version waits for this one.
        const { target } = event
        if (target instanceof IDBDatabase) target.close()
      },
    })
    return {
      trouble: null,
      all: async () => (await db.getAll('jobs')).map(readJob),
      get: async (id) => {
        const found: unknown = await db.get('jobs', id)
        return found === undefined ? null : readJob(found)
      },
      keep: (job, base, photos = []) => keepIn(db, job, base, photos),
      remove: async (id) => {
        const change = db.transaction(['jobs', 'photos'], 'readwrite')
        await change.objectStore('jobs').delete(id)
        for (const key of await change.objectStore('photos').index('job').getAllKeys(id))
          await change.objectStore('photos').delete(key)
        await change.done
      },
      photos: (job) => db.getAllFromIndex('photos', 'job', job),
    }
  } catch (error) {
    return memoryShelf(error instanceof DOMException && error.name === 'VersionError' ? 'later' : 'denied')
  }
}

/** Asks the browser not to clear away what is kept when room runs short; whether it agreed. */
export const askToPersist = async (): Promise<boolean> => {
  try {
    return await navigator.storage.persist()
  } catch {
    return false
  }
}
