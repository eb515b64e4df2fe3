import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Job, jobLimits, newJob, readJob } from '@/link/job.ts'
import { jobMoments, readJobAddress, writeJobAddress } from '@/link/job-address.ts'

const now = Date.UTC(2026, 10, 30, 9)
const whole: Job = { ...newJob(12, now, 'Blue machine'), photos: [{ id: 3, words: 'The brushes' }] }
const changed = (change: Readonly<Record<string, unknown>>): unknown => ({ ...whole, ...change })

const reasonOf = (value: unknown): string => {
  const reading = readJob(value)
  return reading.kind === 'unreadable' ? reading.reason : reading.kind
}

const iso = '2026-11-30T09:00:00.000Z'

describe('a job', () => {
  test('is read as it was made, also through JSON', () => {
    expect(readJob(whole)).toEqual({ kind: 'job', job: whole })
    expect(readJob(JSON.parse(JSON.stringify(whole)))).toEqual({ kind: 'job', job: whole })
  })
  test('is new at the time it is given, with a name of at most so many characters', () => {
    const long = '🧶'.repeat(jobLimits.name + 5)
    expect(newJob(1, now, long).name).toBe('🧶'.repeat(jobLimits.name))
    expect(newJob(1, now).made).toBe('2026-11-30T09:00:00.000Z')
    expect(readJob(newJob(1, now, long)).kind).toBe('job')
  })
  test.each([
    ['text', 'it is not a job of this site'],
    [null, 'it is not a job of this site'],
    [changed({ id: 0 }), 'its “id” is no whole number from 1 to 4294967295'],
    [changed({ id: '7' }), 'its “id” is no number'],
    [changed({ changed: 'yesterday' }), 'its “changed” is no time such as 2026-11-30T09:00:00.000Z'],
    [
      changed({ changed: '2026-13-30T09:00:00.000Z' }),
      'its “changed” is no time such as 2026-11-30T09:00:00.000Z',
    ],
    [changed({ changed: `${iso} ` }), 'its “changed” is no time such as'],
    [changed({ changed: `+${iso}` }), 'its “changed” is no time such as'],
    [changed({ state: 'sold' }), 'its state is not known here'],
    [changed({ name: 'x'.repeat(81) }), 'its “name” is longer than 80 characters'],
    [changed({ price: 3 }), 'it has “price”, which is not known here'],
    [changed({ word: undefined }), 'its “word” is no text'],
    [changed({ intake: { ...whole.intake, stood: 'perhaps' } }), 'its answer “stood” is not known here'],
    [changed({ photos: [{ id: 1 }] }), 'one of its pictures has a part that is missing'],
    [changed({ repairs: ['\u202e<b>'] }), 'one of its repairs has a part that is missing'],
    [changed({ form: 0 }), 'its form is not known here'],
    [changed({ form: 1 }), 'it has “turnedOut”, which is not known here'],
    [changed({ turnedOut: ['strip.9.seized'] }), 'a fault that it turned out to be is not known here'],
    [changed({ turnedOut: [3] }), 'a fault that it turned out to be is no text'],
    [changed({ turnedOut: Array(61).fill('belt.off') }), 'its “turnedOut” has more than 60 entries'],
    [changed({ measuredAfter: 'own='.repeat(300) }), 'its “measuredAfter” is longer than 800 characters'],
    [changed({ keptBack: ['price'] }), 'a part that it keeps back is not known here'],
  ])('that can’t be read says why, %#', (value, reason) => {
    expect(reasonOf(value)).toContain(reason)
  })
  test('of the first form is read as one of which nobody said what it turned out to be', () => {
    const { turnedOut, keptBack, measuredBefore, measuredAfter, ...first } = whole
    expect([turnedOut, keptBack, measuredBefore, measuredAfter]).toEqual([null, [], '', ''])
    expect(readJob({ ...first, form: 1 })).toEqual({ kind: 'job', job: whole })
    const said: Job = { ...whole, turnedOut: ['strip.3.seized', 'strip.6.slow=300'], keptBack: ['proof'] }
    expect(readJob(said)).toEqual({ kind: 'job', job: said })
  })
  test('of a later form is said to be so, with its name', () => {
    expect(readJob(changed({ form: 3, more: true }))).toEqual({ kind: 'later', name: 'Blue machine' })
    expect(readJob({ form: 9 })).toEqual({ kind: 'later', name: '' })
  })
  test('never throws, whatever it is read from', () => {
    fc.assert(
      fc.property(fc.anything(), (value) => {
        expect(['job', 'later', 'unreadable']).toContain(readJob(value).kind)
      }),
    )
  })
})

describe('the address of a job', () => {
  test('is its number and the moment, and leads back', () => {
    for (const moment of jobMoments)
      expect(readJobAddress(writeJobAddress(4294967295, moment))).toEqual({ id: 4294967295, moment })
  })
  test.each([
    '',
    '#',
    '#12',
    '#12.',
    '#12.sell',
    '#0.look',
    '#4294967296.look',
    '#12.look.x',
    '#-1.look',
    '#main',
  ])('is none where it is %s', (fragment) => {
    expect(readJobAddress(fragment)).toBeNull()
  })
})
