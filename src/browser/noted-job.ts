/** Which job the search for faults notes into, and whether what is seen is before the work or after it. */
export interface NotedJob {
  readonly id: number
  readonly part: 'before' | 'after'
}

/**
 * The job on its way between its page and the search for faults. It is in no address: a server would see it there. This
 * window's session carries it.
 */
const key = 'every-eighth-needle-job'

/** Sets the job that this window notes into; null for none. */
export const setNotedJob = (job: NotedJob | null): void => {
  try {
    if (job === null) sessionStorage.removeItem(key)
    else sessionStorage.setItem(key, JSON.stringify(job))
  } catch {
    // A browser that keeps nothing keeps no jobs either, and its page says so.
  }
}

/** The job that this window notes into; null for none. */
export const notedJob = (): NotedJob | null => {
  try {
    const value: unknown = JSON.parse(sessionStorage.getItem(key) ?? 'null')
    if (typeof value !== 'object' || value === null || !('id' in value) || !('part' in value)) return null
    const { id, part } = value
    return typeof id === 'number' && (part === 'before' || part === 'after') ? { id, part } : null
  } catch {
    return null
  }
}
