import { required } from '../../browser/dom.ts'
import { fileName, saveFile } from '../../browser/save-file.ts'
import type { Job } from '../../link/job.ts'
import type { Section } from './section.ts'
import { writeJobFile, type WholeJob } from './job-file.ts'
import type { Notice } from './notice.ts'
import type { Shelf } from './shelf.ts'
import { takeIn } from './take-in.ts'
import { jobName } from './words.ts'

const wholeOf = async (shelf: Shelf, job: Job): Promise<WholeJob> => {
  const photos = await shelf.photos(job.id)
  const bytes = await Promise.all(
    photos.map(async ({ id, jpeg }) => [id, new Uint8Array(await jpeg.arrayBuffer())] as const),
  )
  const pictures = new Map(bytes)
  // A picture that the device has lost must not make a file that can't be opened again.
  return { job: { ...job, photos: job.photos.filter(({ id }) => pictures.has(id)) }, pictures }
}

const saveJobs = (jobs: readonly WholeJob[], name: string): void => {
  saveFile(fileName(name, 'jobs', 'zip'), new Blob([writeJobFile(jobs)], { type: 'application/zip' }))
}

/** Saving one job or all as a file, and opening such a file; `changed` is called when jobs were taken in. */
export const bindFiles = (
  { root, job, shelf }: Section,
  notice: Notice,
  changed: () => Promise<void>,
): void => {
  const input = required(root, '.job-open-file input', HTMLInputElement)
  input.addEventListener('change', () => {
    const file = input.files?.[0]
    input.value = ''
    if (!file) return
    void takeIn(root, shelf, file).then(async (words) => {
      notice.say(words)
      await changed()
    })
  })
  required(root, '.job-all-out', HTMLButtonElement).addEventListener('click', () => {
    void shelf.all().then(async (readings) => {
      const jobs = readings.flatMap((reading) => (reading.kind === 'job' ? [reading.job] : []))
      saveJobs(await Promise.all(jobs.map((one) => wholeOf(shelf, one))), 'jobs')
    })
  })
  required(root, '.job-out', HTMLButtonElement).addEventListener('click', () => {
    const now = job.now()
    void job.flush().then(async () => {
      saveJobs([await wholeOf(shelf, now)], jobName(now))
    })
  })
}
