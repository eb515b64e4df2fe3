import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import type * as Storage from '@/browser/storage.ts'

/** The part of a browser's storage that the module uses. */
class TestStorage {
  readonly texts = new Map<string, string>()
  room = Infinity

  getItem(key: string): string | null {
    return this.texts.get(key) ?? null
  }
  setItem(key: string, text: string): void {
    if (text.length > this.room) throw new DOMException('It is full.', 'QuotaExceededError')
    this.texts.set(key, text)
  }
  removeItem(key: string): void {
    this.texts.delete(key)
  }
}

const count: Storage.Section<number> = {
  read: ({ count }) => (typeof count === 'number' ? count : 0),
  write: (count) => ({ count }),
}

const letterKeys: Storage.Section<boolean> = {
  read: ({ letterKeys }) => letterKeys !== false,
  write: (letterKeys) => ({ letterKeys }),
}

const key = 'every-eighth-needle'
let storage: TestStorage
let kept: typeof Storage

/** Opens a page: the module's own memory is that of a page. */
const openPage = async (): Promise<void> => {
  vi.resetModules()
  kept = await import('@/browser/storage.ts')
}

beforeEach(async () => {
  storage = new TestStorage()
  vi.stubGlobal('localStorage', storage)
  await openPage()
})
afterEach(() => {
  vi.unstubAllGlobals()
})

describe('what the site keeps in a browser', () => {
  test('comes back on the next page, each section by itself', async () => {
    expect(kept.change(count, (before) => before + 2)).toBe(true)
    expect(kept.change(letterKeys, () => false)).toBe(true)
    await openPage()
    expect([kept.load(count), kept.load(letterKeys)]).toEqual([2, false])
    expect([...storage.texts.keys()]).toEqual([key])
    expect(JSON.parse(storage.getItem(key)!)).toEqual({ version: 3, count: 2, letterKeys: false })
  })

  test('is not written where nothing changes', () => {
    expect(kept.change(count, (before) => before)).toBe(true)
    expect(storage.texts.size).toBe(0)
  })

  test('keeps the fields of other versions and sections', () => {
    storage.setItem(key, '{"version":9,"more":[1],"count":4}')
    kept.change(count, (before) => before + 1)
    expect(JSON.parse(storage.getItem(key)!)).toEqual({ version: 3, more: [1], count: 5 })
  })

  test.each(['', 'null', '[]', '7', '"version"', '{', '{}', '{"version":"2"}', '{"version":-1}'])(
    'sets aside the text %s, and starts fresh',
    (text) => {
      storage.setItem(key, text)
      expect(kept.load(count)).toBe(0)
      expect(kept.change(count, () => 1)).toBe(true)
      expect(storage.getItem(`${key}-unread`)).toBe(text)
      expect(kept.storageTrouble()).toBe('unread')
      kept.forget(count, 0)
      expect(storage.texts.size).toBe(0)
    },
  )

  test('takes over version 2, which kept the letters of a class under a key of their own', async () => {
    storage.setItem(key, '{"version":2,"count":3}')
    storage.setItem(`${key}-letters-off`, '')
    expect([kept.load(count), kept.load(letterKeys)]).toEqual([3, false])
    kept.change(count, () => 4)
    expect([...storage.texts.keys()]).toEqual([key])
    await openPage()
    expect([kept.load(count), kept.load(letterKeys)]).toEqual([4, false])
  })

  test('forgets one section and keeps the others', () => {
    kept.change(count, () => 2)
    kept.change(letterKeys, () => false)
    kept.forget(count, 0)
    expect([kept.load(count), kept.load(letterKeys)]).toEqual([0, false])
  })
})

describe('a browser that keeps nothing', () => {
  test('remembers what is written until the page is left', async () => {
    storage.setItem(key, '{"version":3,"count":1}')
    storage.room = 10
    expect(kept.change(count, (before) => before + 1)).toBe(false)
    expect([kept.load(count), kept.storageTrouble()]).toEqual([2, 'not-kept'])
    await openPage()
    expect(kept.load(count)).toBe(1)
  })

  test('writes what it remembered once there is room again', () => {
    storage.room = 10
    kept.change(count, () => 2)
    storage.room = Infinity
    expect(kept.change(count, (before) => before)).toBe(true)
    expect(JSON.parse(storage.getItem(key)!)).toMatchObject({ count: 2 })
  })

  test('that denies its storage gives nothing, and nothing throws', () => {
    Object.defineProperty(globalThis, 'localStorage', {
      configurable: true,
      get: () => {
        throw new DOMException('The user denied it.', 'SecurityError')
      },
    })
    expect([kept.load(count), kept.storageTrouble()]).toEqual([0, 'not-kept'])
    expect(kept.change(count, () => 5)).toBe(false)
    expect(kept.load(count)).toBe(5)
    kept.forget(count, 0)
    expect(kept.load(count)).toBe(0)
  })
})
