import type { Job } from '../../link/job.ts'
import { entry } from '../../mechanism/lookup.ts'
import { counted } from '../../words/lists.ts'
import { ask } from './ask.ts'
import { readJobFile, type WholeJob } from './job-file.ts'
import { randomId } from './random-id.ts'
import type { Photo, Shelf } from './shelf.ts'
import { jobName, timeWords } from './words.ts'

/** The largest file that is read, in bytes. */
const mostBytes = 600e6

const choices = {
  take: 'Take the one in the file',
  both: 'Keep both',
  leave: 'Leave it as it is here',
} as const

const photosOf = ({ job, pictures }: WholeJob): Photo[] =>
  job.photos.map(({ id }) => ({
    id,
    job: job.id,
    jpeg: new Blob([new Uint8Array(entry(pictures, id))], { type: 'image/jpeg' }),
  }))

/** The same job under numbers of its own. */
const copyOf = ({ job, pictures }: WholeJob): WholeJob => {
  const renamed = job.photos.map(({ id, words }) => ({ from: id, id: randomId(), words }))
  return {
    job: {
      ...job,
      id: randomId(),
      name: `${jobName(job)} (copy)`,
      photos: renamed.map(({ id, words }) => ({ id, words })),
    },
    pictures: new Map(renamed.map(({ from, id }) => [id, entry(pictures, from)])),
  }
}

/** A job to keep, and the one that it takes the place of; null for none. */
interface Change {
  readonly whole: WholeJob
  readonly before: Job | null
}

/** What to do with each job of a file, asked where one of the same number is here and differs. */
const decide = async (
  root: HTMLElement,
  shelf: Shelf,
  jobs: readonly WholeJob[],
): Promise<{ changes: readonly Change[]; same: number }> => {
  const changes: Change[] = []
  let same = 0
  for (const whole of jobs) {
    const here = await shelf.get(whole.job.id)
    if (here === null) {
      changes.push({ whole, before: null })
      continue
    }
    if (here.kind === 'job' && here.job.changed === whole.job.changed) {
      same++
      continue
    }
    const isNewer = here.kind === 'job' && here.job.changed < whole.job.changed
    const words =
      here.kind === 'job'
        ? `“${jobName(whole.job)}” is here already, as it was on ${timeWords(here.job.changed)}. The one in the file is ${isNewer ? 'newer' : 'older'}: ${timeWords(whole.job.changed)}.`
        : `“${jobName(whole.job)}” is here already, in a form that this page can’t read.`
    const answer = await ask(root, words, choices)
    if (answer === 'take' && here.kind === 'job') changes.push({ whole, before: here.job })
    if (answer === 'both' || (answer === 'take' && here.kind !== 'job'))
      changes.push({ whole: copyOf(whole), before: null })
  }
  return { changes, same }
}

/** Keeps all changes; where one can't be kept, none is. Whether they were. */
const keepAll = async (shelf: Shelf, changes: readonly Change[]): Promise<boolean> => {
  const done: { readonly change: Change; readonly photos: readonly Photo[] }[] = []
  for (const change of changes) {
    const { whole, before } = change
    const photos = before ? await shelf.photos(before.id) : []
    const how = await shelf.keep(whole.job, before?.changed ?? null, photosOf(whole))
    if (how === 'kept') {
      done.push({ change, photos })
      continue
    }
    for (const { change: kept, photos: old } of done.reverse())
      if (kept.before) await shelf.keep(kept.before, kept.whole.job.changed, old)
      else await shelf.remove(kept.whole.job.id)
    return false
  }
  return true
}

/** Takes a file of jobs in, whole or not at all; gives the sentence that says what came of it. */
export const takeIn = async (root: HTMLElement, shelf: Shelf, file: File): Promise<string> => {
  if (file.size > mostBytes)
    return `“${file.name}” is too large to be a file of jobs. Nothing was taken from it.`
  const reading = readJobFile(new Uint8Array(await file.arrayBuffer()), file.name)
  if (reading.kind === 'refused') return reading.sentence
  const { changes, same } = await decide(root, shelf, reading.jobs)
  if (!(await keepAll(shelf, changes)))
    return 'This device has no room for all of these jobs, so none of them was taken in.'
  const parts = [
    ...(changes.length > 0 ? [`${counted(changes.length, 'job')} taken in`] : []),
    ...(same > 0 ? [`${counted(same, 'job')} here already, just the same`] : []),
  ]
  return parts.length === 0 ? 'All stays as it was.' : `${parts.join('; ')}.`
}
