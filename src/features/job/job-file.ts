import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate'
import { type Job, readJob } from '../../link/job.ts'
import { entry } from '../../mechanism/lookup.ts'
import { quote } from '../../link/troubles.ts'

/** A job with its pictures, as a file has it. */
export interface WholeJob {
  readonly job: Job
  /** By the id of a picture: the bytes of a JPEG. */
  readonly pictures: ReadonlyMap<number, Uint8Array>
}

/** What came of reading a file: its jobs, all of them; or why none is taken, as a sentence. */
export type FileReading =
  | { readonly kind: 'jobs'; readonly jobs: readonly WholeJob[] }
  | { readonly kind: 'refused'; readonly sentence: string }

/** The most bytes that a file may unpack to, one picture may have, and one job's text may have. */
const most = { file: 600e6, picture: 5e6, text: 1e6 } as const
/** The most jobs of a file. */
const mostJobs = 2000

const folderOf = (id: number): string => `job-${id}`
const textName = 'job.json'
const pictureName = (id: number): string => `photo-${id}.jpg`

/** Jobs as one file: a zip with a folder a job, its text as JSON and its pictures. */
export const writeJobFile = (jobs: readonly WholeJob[]): Uint8Array<ArrayBuffer> => {
  const files: Zippable = {}
  for (const { job, pictures } of jobs) {
    const folder = folderOf(job.id)
    files[`${folder}/${textName}`] = strToU8(`${JSON.stringify(job, null, 2)}\n`)
    for (const [id, jpeg] of pictures) files[`${folder}/${pictureName(id)}`] = [jpeg, { level: 0 }]
  }
  return new Uint8Array(zipSync(files))
}

/** Why a file is refused; whoever reads it makes a sentence of it. */
class Refusal extends Error {}

const unpacked = (bytes: Uint8Array): Record<string, Uint8Array> => {
  let size = 0
  try {
    return unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        size += originalSize
        if (size > most.file || originalSize > (name.endsWith('.jpg') ? most.picture : most.text))
          throw new Refusal('it holds more than this page can take')
        return !name.endsWith('/')
      },
    })
  } catch (error) {
    if (error instanceof Refusal) throw error
    throw new Refusal('it is no file of jobs, or it was cut on its way')
  }
}

const jobOf = (bytes: Uint8Array): Job => {
  let value: unknown
  try {
    value = JSON.parse(strFromU8(bytes))
  } catch {
    throw new Refusal('a job in it was cut, or changed by hand so that it can’t be read')
  }
  const reading = readJob(value)
  switch (reading.kind) {
    case 'job':
      return reading.job
    case 'later':
      throw new Refusal(
        `${quote(reading.name)} was written by a later version of this site. Open it there, or where the site is newer`,
      )
    case 'unreadable':
      throw new Refusal(`a job in it can’t be read: ${reading.reason}`)
  }
}

const isJpeg = (bytes: Uint8Array): boolean => bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff

const wholeJob = (folder: string, files: ReadonlyMap<string, Uint8Array>): WholeJob => {
  const text = files.get(textName)
  if (!text) throw new Refusal(`${quote(folder)} in it has no ${quote(textName)}`)
  const job = jobOf(text)
  if (folder !== folderOf(job.id))
    throw new Refusal(`${quote(folder)} in it holds another job than its name says`)
  const pictures = new Map(
    job.photos.map(({ id }) => {
      const jpeg = files.get(pictureName(id))
      if (!jpeg || !isJpeg(jpeg)) throw new Refusal(`a picture of ${quote(job.name)} is missing or is none`)
      return [id, jpeg] as const
    }),
  )
  if (files.size !== pictures.size + 1) throw new Refusal(`${quote(folder)} in it has a file that no job has`)
  return { job, pictures }
}

/** Reads a file of jobs: all of it, or nothing. `name` is the file's, for the sentence that says why it is refused. */
export const readJobFile = (bytes: Uint8Array, name: string): FileReading => {
  try {
    const folders = new Map<string, Map<string, Uint8Array>>()
    for (const [path, content] of Object.entries(unpacked(bytes))) {
      const [, folder, file] = /^(job-\d{1,10})\/([\w.-]{1,40})$/.exec(path) ?? []
      if (folder === undefined || file === undefined)
        throw new Refusal(`it has ${quote(path)}, which no job has`)
      if (!folders.has(folder)) folders.set(folder, new Map())
      entry(folders, folder).set(file, content)
    }
    if (folders.size === 0) throw new Refusal('there is no job in it')
    if (folders.size > mostJobs) throw new Refusal(`it has more than ${mostJobs} jobs`)
    return { kind: 'jobs', jobs: [...folders].map(([folder, files]) => wholeJob(folder, files)) }
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    return {
      kind: 'refused',
      sentence: `${quote(name)} was not opened: ${error.message}. Nothing was taken from it.`,
    }
  }
}
