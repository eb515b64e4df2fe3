import { expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { confirmedFaults, experienceOf } from '@/features/job/experience.ts'
import { readJobFile, writeJobFile } from '@/features/job/job-file.ts'
import { findsOf } from '@/find/experience.ts'
import { type Job, jobStates, newJob } from '@/link/job.ts'
import { faultId } from '@/mechanism/fault.ts'

const library = cardLibrary(cardsFolder)
const now = Date.UTC(2026, 10, 30, 9)
const jobWith = (id: number, change: Partial<Job>): Job => ({
  ...newJob(id, now, `Machine ${id}`),
  state: 'handed-over',
  ...change,
})

const jobs: readonly Job[] = [
  jobWith(1, { turnedOut: ['strip.3.seized', 'strip.6.seized', 'needle.R12.bent'] }),
  jobWith(2, { before: 'pass=1.right.500.wR3&check=cover.catch.R3.broken&check=retainer' }),
  jobWith(3, { turnedOut: [], before: 'pass=1.right.500.wR3&check=cover.catch.R3.broken', state: 'proved' }),
  jobWith(4, { turnedOut: ['strip.1.seized'], state: 'for-parts' }),
]

test('what somebody confirmed counts, else what a hand found, a kind once a machine', () => {
  expect(experienceOf(jobs, library)).toEqual({ 'strip.seized': 2, 'needle.bent': 1, 'catch.broken': 1 })
  expect(confirmedFaults(jobs[1]!, library).map(faultId)).toEqual(['catch.R3.broken'])
  expect(confirmedFaults(jobs[2]!, library)).toEqual([])
})

test('only finished jobs count', () => {
  const counted = jobStates.filter(
    (state) => findsOf(experienceOf([jobWith(1, { turnedOut: ['belt.off'], state })], library)) > 0,
  )
  expect(counted).toEqual(['proved', 'handed-over', 'for-parts'])
})

test('experience goes out and comes in with the jobs', () => {
  const reading = readJobFile(writeJobFile(jobs.map((job) => ({ job, pictures: new Map() }))), 'jobs.zip')
  const again = reading.kind === 'jobs' ? reading.jobs.map(({ job }) => job) : []
  expect(again).toHaveLength(4)
  expect(experienceOf(again, library)).toEqual(experienceOf(jobs, library))
})
