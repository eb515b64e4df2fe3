import { type Job, readJob } from '../../link/job.ts'

const prefix = 'every-eighth-needle-unkept-'

/** A change of a job that is not kept yet, and the time of change of the job that it changes; null for a new one. */
export interface Unkept {
  readonly job: Job
  readonly base: string | null
}

/**
 * Notes a change at once, since keeping a job takes a moment in which the page may be closed or loaded again. Where
 * the browser refuses, the change is kept as before, a moment later.
 */
export const noteUnkept = ({ job, base }: Unkept): void => {
  try {
    localStorage.setItem(`${prefix}${job.id}`, JSON.stringify({ job, base }))
  } catch {
    // Denied, or no room.
  }
}

/** Forgets what was noted of a job, once it is kept. */
export const forgetUnkept = (id: number): void => {
  try {
    localStorage.removeItem(`${prefix}${id}`)
  } catch {
    // Denied: nothing was noted either.
  }
}

const readUnkept = (text: string): Unkept | null => {
  try {
    const noted: unknown = JSON.parse(text)
    if (typeof noted !== 'object' || noted === null || !('job' in noted) || !('base' in noted)) return null
    const reading = readJob(noted.job)
    const { base } = noted
    return reading.kind === 'job' && (base === null || typeof base === 'string')
      ? { job: reading.job, base }
      : null
  } catch {
    return null
  }
}

/** The changes that a page before this one noted and had no time to keep. What can't be read as one is left out. */
export const allUnkept = (): readonly Unkept[] => {
  try {
    return Object.keys(localStorage)
      .filter((key) => key.startsWith(prefix))
      .flatMap((key) => readUnkept(localStorage.getItem(key) ?? '') ?? [])
  } catch {
    return []
  }
}
