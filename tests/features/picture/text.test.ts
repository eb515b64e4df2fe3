import { describe, expect, test } from 'vitest'
import { readColour } from '@/features/picture/colour.ts'
import { inLines } from '@/features/picture/lines.ts'
import { inScheme } from '@/features/picture/scheme.ts'
import { escaped } from '@/drawings/shared/xml.ts'

describe('computed colours', () => {
  test('are read in both forms that browsers give, with how much they cover', () => {
    expect(readColour('rgb(13, 92, 145)')).toEqual({ hex: '#0d5c91', cover: 1 })
    expect(readColour('rgba(0, 0, 0, 0.25)')).toEqual({ hex: '#000000', cover: 0.25 })
    expect(readColour('color(srgb 1 0.5 0)')).toEqual({ hex: '#ff8000', cover: 1 })
    expect(readColour('color(srgb 0 0 1 / 0.5)')).toEqual({ hex: '#0000ff', cover: 0.5 })
  })

  test('are none where the value is something else', () => {
    for (const value of ['none', 'url("#hatch")', 'color(display-p3 1 0 0)', 'rgb(1, 2)'])
      expect(readColour(value), value).toBeNull()
  })
})

describe('lines', () => {
  const measure = (words: string): number => words.length

  test('break between words, and hold all of them', () => {
    const lines = inLines('The strip is pushed, and its catch lets go.', 14, measure)
    expect(lines).toEqual(['The strip is', 'pushed, and', 'its catch lets', 'go.'])
  })

  test('break a link between its keys, and what is too wide for a line anywhere', () => {
    expect(inLines('https://x.org/a/#pass=3&at=R12', 20, measure)).toEqual([
      'https://x.org/a/#',
      'pass=3&at=R12',
    ])
    expect(inLines('card=x.AAAAAAAAAAAA', 8, measure)).toEqual(['card=x.A', 'AAAAAAAA', 'AAA'])
    expect(inLines('', 8, measure)).toEqual([])
  })
})

describe('styles in a scheme', () => {
  const css =
    ':root{--a:1}@media (prefers-color-scheme:dark){:root{--a:2}b{c:d}}@media print{:root{--a:3}}e{f:g}'

  test('have what is for the scheme where it was, and nothing for another medium', () => {
    expect(inScheme(css, 'light')).toBe(':root{--a:1}e{f:g}')
    expect(inScheme(css, 'dark')).toBe(':root{--a:1}:root{--a:2}b{c:d}e{f:g}')
  })

  test('that end within a block are refused', () => {
    expect(() => inScheme('@media print{a{b:c}', 'light')).toThrow('no end')
  })
})

test('words become XML that has nothing of their own in it, and no character that XML forbids', () => {
  expect(escaped('a < b & "c" > d')).toBe('a &lt; b &amp; &quot;c&quot; &gt; d')
  expect(escaped('one\u0000\u0007\ud800two\nthree\tfour\ufffe')).toBe('onetwo\nthree\tfour')
  expect(escaped('ä 𝄞')).toBe('ä 𝄞')
})
