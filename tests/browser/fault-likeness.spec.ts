import { expect, test } from '@playwright/test'
import { pageOf } from './built.ts'

/** What is on a fault's page between what it is confused with and the checks, on one line. */
const confusedWith = (slug: string): string => {
  const words = (pageOf(`faults/${slug}/index.html`).querySelector('.reading')?.textContent ?? '').replaceAll(
    /\s+/g,
    ' ',
  )
  return words.slice(words.indexOf('What it is confused with'), words.indexOf('Check it from outside'))
}

test('a fault that goes by chance says amount by amount on how many machines it looks like another', () => {
  const sticky = confusedWith('pin-sticky')
  expect(sticky).toContain('tried on 50 machines')
  expect(sticky).toMatch(/at 50\s% of the turns: shows on 43 of the 50 machines\./)
  expect(sticky).toMatch(/Pin stuck down: gives the same bed at first on 43; told apart later on 38/)
  const loose = confusedWith('pivots-loose')
  expect(loose).toMatch(/Pivots loose by 0\.2\smm: shows on 26 of the 50 machines\./)
  expect(loose).toMatch(/Catch broken: gives the same bed at first on 25; told apart later on all of them/)
})

test('and so does the page of the other', () => {
  expect(confusedWith('pin-low')).toMatch(
    /Pin held by old oil, now and then: pin 12 fails .* tried on 50 machines/,
  )
  expect(confusedWith('catch-broken')).toMatch(
    /Pivots loose: .*tried on 50 machines: gives the same bed at first on 25/,
  )
  expect(confusedWith('belt-timing')).not.toContain('machines')
})
