import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { outlineOf } from '@/site/chapter-outline.ts'
import { stages } from '@/site/check-list.ts'

const chapter = readFileSync('content/chapters/10-on-the-bench.mdx', 'utf8')
const inChapter = outlineOf(chapter).components.flatMap(({ name, attributes }) =>
  name === 'Caution' ? (attributes.get('of') ?? []) : [],
)
const inList = stages.flatMap(({ cautions }) => cautions)

test('the check list has each caution of the chapter on the bench once, where it is needed', () => {
  expect([...inList].sort()).toEqual([...new Set(inChapter)].sort())
})

test('the cautions of the chapter’s steps come in the chapter’s order', () => {
  const general = ['notes', 'fingers']
  const order = (ids: readonly string[]): string[] => ids.filter((id) => !general.includes(id))
  expect(order(inList)).toEqual(order(inChapter))
})

test('the stages follow the order of the chapter, from the settings to the card reader', () => {
  const byHand = [...chapter.matchAll(/<li>(.*?)<\/li>/g)].map(([, text]) => (text ?? '').toLowerCase())
  const words = ['settings', 'needles', 'test cards', 'carriage', 'strips', 'rockers', 'reader', 'same test']
  const places = words.map((word) =>
    stages.findIndex(({ title, ticks }) => [title, ...ticks].join(' ').toLowerCase().includes(word)),
  )
  const titled = words.map((word) => stages.findIndex(({ title }) => title.toLowerCase().includes(word)))
  const order = titled.map((place, n) => (place < 0 ? places[n]! : place))
  expect(byHand).toHaveLength(words.length)
  for (const [n, word] of words.entries()) expect(byHand[n]).toContain(word)
  expect(order).toEqual([...order].sort((one, other) => one - other))
})
