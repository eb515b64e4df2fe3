import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { keepUnkept } from '@/features/job/keep-unkept.ts'
import type { Keeping, Shelf } from '@/features/job/shelf.ts'
import { allUnkept, noteUnkept } from '@/features/job/unkept.ts'
import { type Job, newJob } from '@/link/job.ts'

const job = newJob(7, Date.UTC(2026, 10, 30, 9), 'Blue machine')
const later: Job = { ...job, changed: '2026-11-30T10:00:00.000Z', name: 'Blue machine, brown foot' }

/** What a browser keeps for a site, as far as the site uses it. */
const storage = (): Storage =>
  Object.defineProperties(
    {},
    Object.fromEntries(
      Object.entries({
        setItem(this: Record<string, string>, key: string, value: string) {
          this[key] = value
        },
        getItem(this: Record<string, string>, key: string) {
          return this[key] ?? null
        },
        removeItem(this: Record<string, string>, key: string) {
          Reflect.deleteProperty(this, key)
        },
      }).map(([name, value]) => [name, { value }]),
    ),
  ) as Storage

beforeEach(() => {
  vi.stubGlobal('localStorage', storage())
})
afterEach(() => {
  vi.unstubAllGlobals()
})

/** A shelf that has a job, and answers a change and a new job in these ways. */
const shelfThat = (change: Keeping, copy: Keeping): Shelf & { readonly taken: Job[] } => {
  const taken: Job[] = []
  return {
    taken,
    trouble: null,
    all: () => Promise.resolve([{ kind: 'job', job }]),
    get: () => Promise.resolve({ kind: 'job', job }),
    keep: (each, base) => {
      const how = base === null ? copy : change
      if (how === 'kept') taken.push(each)
      return Promise.resolve(how)
    },
    remove: () => Promise.resolve(),
    photos: () => Promise.resolve([]),
  }
}

test('a change that was noted is kept, and forgotten then', async () => {
  noteUnkept({ job: later, base: job.changed })
  const shelf = shelfThat('kept', 'kept')
  expect(await keepUnkept(shelf)).toEqual([])
  expect(shelf.taken).toEqual([later])
  expect(allUnkept()).toEqual([])
})

test('a change of what another window has changed becomes a copy, which is said', async () => {
  noteUnkept({ job: later, base: job.changed })
  const shelf = shelfThat('changed-elsewhere', 'kept')
  expect(await keepUnkept(shelf)).toEqual([expect.stringContaining('“Blue machine, brown foot (copy)”')])
  expect(shelf.taken.map(({ name }) => name)).toEqual(['Blue machine, brown foot (copy)'])
  expect(allUnkept()).toEqual([])
})

test.each([
  ['full', 'full'],
  ['refused', 'refused'],
  ['changed-elsewhere', 'full'],
  ['changed-elsewhere', 'refused'],
] as const)(
  'a change stays noted where it is %s and a copy is %s, and no copy is spoken of',
  async (change, copy) => {
    noteUnkept({ job: later, base: job.changed })
    expect(await keepUnkept(shelfThat(change, copy))).toEqual([])
    expect(allUnkept()).toEqual([{ job: later, base: job.changed }])
  },
)

test.each(['{', '[]', 'null', '{"job":{},"base":null}', '{"base":3}', '“<b>'])(
  'what was noted and can’t be read as a change is left out: %s',
  async (text) => {
    localStorage.setItem('every-eighth-needle-unkept-7', text)
    const shelf = shelfThat('kept', 'kept')
    expect(await keepUnkept(shelf)).toEqual([])
    expect(shelf.taken).toEqual([])
  },
)

test('where the browser denies its storage nothing is noted, and nothing fails', () => {
  vi.stubGlobal('localStorage', undefined)
  expect(() => {
    noteUnkept({ job: later, base: null })
  }).not.toThrow()
  expect(allUnkept()).toEqual([])
})
