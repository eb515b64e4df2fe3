import { expect, test } from '@playwright/test'
import { searchIn } from '@/features/search/search-in.ts'
import type { SearchDocument } from '@/link/search-document.ts'
import { fileAt, pageOf } from './built.ts'

const documents = JSON.parse(
  pageOf('search/index.html').querySelector('.documents')?.textContent ?? '[]',
) as SearchDocument[]
const search = searchIn(documents)

/** What people type, and where it has to lead, among the first few. */
const typed: readonly (readonly [words: string, address: RegExp])[] = [
  ['ladder', /\/case\/$/],
  ['ladder', /catch-broken/],
  ['skipping stitches', /strip-seized/],
  ['skips a stitch', /pin-low/],
  ['patterns backwards', /card-reversed/],
  ['my pattern is backwards', /card-reversed/],
  ['row counter', /#row-counter$/],
  ['every 8th', /strip-(seized|over)/],
  ['every 24th needle', /pin-(low|high)/],
  ['dropped stitches', /retainer-worn/],
  ['upside down', /card-reversed/],
  ['which way round does the card go', /card-reversed/],
  ['remove the carriage', /needle-gone/],
  ['carriage jams', /needle-gone/],
  ['The carriage is jammed!', /retainer-worn/],
  ['turn mark', /chapters\/.*step=/],
  ['strips', /strip/],
]

for (const [words, address] of typed)
  test(`the search leads from “${words}” to ${address.source}`, () => {
    const { found, isPart } = search(words)
    expect(isPart).toBe(false)
    const first = found.slice(0, 6).map(({ document }) => document.address)
    expect(first.filter((one) => address.test(one))).not.toEqual([])
  })

test('where no entry has all words, those with some are found, and nothing is found by words that say nothing', () => {
  const { found, isPart } = search('seized flux capacitor')
  expect(isPart).toBe(true)
  expect(found[0]?.document.title).toMatch(/seized/i)
  expect(search('what is the').found).toEqual([])
})

test('every entry of the search leads to a page that is there', () => {
  expect(documents.length).toBeGreaterThan(150)
  const lost = documents.filter(({ address }) => fileAt(new URL(address, 'http://site')) === null)
  expect(lost.map(({ address }) => address)).toEqual([])
})

test('what the page offers to look for is found', () => {
  const offered = [...pageOf('search/index.html').querySelectorAll('.sought a')]
  expect(offered.length).toBeGreaterThan(5)
  for (const link of offered) {
    const words = new URL(link.getAttribute('href') ?? '', 'https://example.org').searchParams.get('q') ?? ''
    expect(words).toBe(link.textContent.trim())
    const { found, isPart } = search(words)
    expect([words, found.length > 0, isPart]).toEqual([words, true, false])
  }
})
