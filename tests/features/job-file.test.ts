import { readdirSync, readFileSync } from 'node:fs'
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readJobFile, type WholeJob, writeJobFile } from '@/features/job/job-file.ts'
import { type Job, newJob } from '@/link/job.ts'

const now = Date.UTC(2026, 10, 30, 9)
const jpeg = Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 1, 2, 3)
const pictured: WholeJob = {
  job: { ...newJob(12, now, 'Blue machine'), photos: [{ id: 3, words: 'The brushes' }] },
  pictures: new Map([[3, jpeg]]),
}
const plain: WholeJob = { job: newJob(13, now, 'Grey machine'), pictures: new Map() }

const sentenceOf = (bytes: Uint8Array): string => {
  const reading = readJobFile(bytes, 'jobs.zip')
  return reading.kind === 'refused' ? reading.sentence : 'taken'
}
const withFiles = (change: (files: Record<string, Uint8Array>) => void): Uint8Array => {
  const files = unzipSync(writeJobFile([pictured, plain]))
  change(files)
  return zipSync(files)
}
const withJob = (change: (job: Job) => unknown): Uint8Array =>
  withFiles((files) => {
    const text = files['job-12/job.json']
    if (!text) throw new Error('the file has no job 12')
    files['job-12/job.json'] = strToU8(JSON.stringify(change(JSON.parse(strFromU8(text)) as Job)))
  })

describe('a file of jobs', () => {
  test('gives its jobs and their pictures back', () => {
    expect(readJobFile(writeJobFile([pictured, plain]), 'jobs.zip')).toEqual({
      kind: 'jobs',
      jobs: [pictured, plain],
    })
  })
  test.each([
    [strToU8('hello'), 'it is no file of jobs, or it was cut on its way'],
    [writeJobFile([pictured]).slice(0, 90), 'it is no file of jobs, or it was cut on its way'],
    [zipSync({}), 'there is no job in it'],
    [zipSync({ 'notes.txt': strToU8('x') }), 'it has “notes.txt”, which no job has'],
    [zipSync({ '../job-1/job.json': strToU8('{}') }), 'which no job has'],
    [zipSync({ 'job-1/photo-1.jpg': jpeg }), '“job-1” in it has no “job.json”'],
    [withJob(() => ({ form: 1 })), 'a job in it can’t be read'],
    [withJob((job) => ({ ...job, form: 3 })), '“Blue machine” was written by a later version of this site'],
    [withJob((job) => ({ ...job, id: 99 })), '“job-12” in it holds another job than its name says'],
    [
      withFiles((files) => delete files['job-12/photo-3.jpg']),
      'a picture of “Blue machine” is missing or is none',
    ],
    [
      withFiles((files) => {
        files['job-12/photo-3.jpg'] = strToU8('<svg onload=alert(1)>')
      }),
      'a picture of “Blue machine” is missing or is none',
    ],
    [
      withFiles((files) => {
        files['job-13/photo-4.jpg'] = jpeg
      }),
      '“job-13” in it has a file that no job has',
    ],
    [
      withFiles((files) => {
        files['job-13/job.json'] = strToU8('{"form":1,')
      }),
      'a job in it was cut',
    ],
    [
      withFiles((files) => (files['job-13/job.json'] = new Uint8Array(2e6))),
      'it holds more than this page can take',
    ],
  ])('that is not whole is refused whole, in a sentence, %#', (bytes, reason) => {
    expect(sentenceOf(bytes)).toContain(reason)
    expect(sentenceOf(bytes)).toMatch(/^“jobs\.zip” was not opened: .*Nothing was taken from it\.$/)
  })
})

/** A value with something else in a place of it: each number is a part's, within the one before; the last may be new. */
const spoiled = (value: unknown, place: readonly number[], put: unknown): unknown => {
  const [first, ...rest] = place
  if (first === undefined || typeof value !== 'object' || value === null) return put
  const parts = Object.entries<unknown>({ ...value })
  const at = first % (parts.length + 1)
  const [name, part] = parts[at] ?? ['more', undefined]
  const inside = spoiled(part, rest, put)
  return Array.isArray(value) ? value.toSpliced(at, 1, inside) : { ...value, [name]: inside }
}

describe('any file at all', () => {
  /** Takes a file whole, or says in one sentence that it takes nothing. What was taken can be written and read again. */
  const expectWholeOrNothing = (bytes: Uint8Array): void => {
    const reading = readJobFile(bytes, 'jobs.zip')
    if (reading.kind === 'refused') {
      expect(reading.sentence).toMatch(/^“jobs\.zip” was not opened: .*Nothing was taken from it\.$/)
      expect(reading.sentence.length).toBeLessThan(300)
      expect(reading.sentence).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u)
    } else expect(readJobFile(writeJobFile(reading.jobs), 'again.zip')).toEqual(reading)
  }
  test('with bytes changed, cut or put in is taken whole or not at all, and that is said', () => {
    const good = writeJobFile([pictured, plain])
    const change = fc.tuple(fc.nat(good.length), fc.nat(3), fc.uint8Array({ maxLength: 3 }))
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
        const bytes = changes.reduce<number[]>(
          (now, [at, gone, put]) => now.toSpliced(at, gone, ...put),
          [...good],
        )
        expectWholeOrNothing(Uint8Array.from(bytes))
      }),
      { numRuns: 500 },
    )
  })
  test('of a job with anything in the place of anything is taken whole or not at all, and that is said', () => {
    const spiteful = fc.constantFrom('\u202e<b>', 'x'.repeat(9000), -1, 1e300, NaN, [], {}, null, '__proto__')
    fc.assert(
      fc.property(
        fc.array(fc.nat(40), { minLength: 1, maxLength: 4 }),
        fc.oneof(spiteful, fc.jsonValue()),
        (place, put) => {
          expectWholeOrNothing(withJob((job) => spoiled(job, place, put)))
        },
      ),
      { numRuns: 200 },
    )
  })
})

/** Files as somebody may have kept them: they open for ever, so one is added for each form, and none is changed. */
describe('files of earlier forms', () => {
  const folder = 'tests/golden/jobs'
  const jobsIn = (name: string): readonly WholeJob[] => {
    const reading = readJobFile(new Uint8Array(readFileSync(`${folder}/${name}`)), name)
    return reading.kind === 'jobs' ? reading.jobs : []
  }
  test.each(readdirSync(folder))('%s still opens', (name) => {
    const jobs = jobsIn(name)
    expect(jobs.map(({ job }) => job.name)).toEqual(['Blue machine', 'Grey machine'])
    expect(jobs.map(({ job }) => job.form)).toEqual([2, 2])
    expect(jobs[0]?.pictures.size).toBe(1)
  })
  test('each say what they said', () => {
    expect(jobsIn('form-1.zip').map(({ job }) => job.turnedOut)).toEqual([null, null])
    expect(jobsIn('form-2.zip').map(({ job: { turnedOut, keptBack } }) => [turnedOut, keptBack])).toEqual([
      [['strip.3.seized', 'needle.R12.bent'], ['proof']],
      [null, []],
    ])
  })
})
