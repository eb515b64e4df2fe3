import { parseHTML } from 'linkedom'
import { optimize } from 'svgo'
import { describe, expect, test } from 'vitest'
import { composed, type Words } from '@/features/picture/composed.ts'

const means = {
  inks: { paper: '#faf6ee', ink: '#20242b', soft: '#585a5e' },
  typeface: "'Barlow Semi Condensed', sans-serif",
  fontRules: "@font-face{font-family:'Barlow Semi Condensed';src:url(data:font/woff2;base64,d09G)}",
  measureAt: (size: number) => (words: string) => words.length * size * 0.5,
}
const drawing = { markup: '<path d="M0,0H10"/>', width: 400, height: 300 }
const words: Words = {
  title: 'Figure 1. The whole chain',
  description: 'Pins <3 & strips',
  sentence:
    'Column 12 is under the sweep. It has no hole, so its pin stays low and the sweep passes over it.',
  address: 'https://x.org/#pass=3&at=R12',
}

const made = composed(drawing, words, means)
const read = (svg: string): Document => parseHTML(svg).document

describe('a picture as a file', () => {
  test('is read by a strict parser, in every mix of what is written on it', () => {
    for (const over of ['', 'Sound'])
      for (const sentence of ['', words.sentence])
        for (const address of ['', words.address]) {
          const { svg } = composed(drawing, { ...words, over, sentence, address }, means)
          expect(() => optimize(svg, { plugins: [] })).not.toThrow()
        }
    expect(() => optimize(made.svg.replace('</desc>', ''), { plugins: [] })).toThrow()
  })

  test('has its name and its description, to which it refers', () => {
    const svg = read(made.svg).querySelector('svg')
    expect(svg?.querySelector('title')?.textContent).toBe(words.title)
    expect(svg?.querySelector('desc')?.textContent).toBe(words.description)
    expect(svg?.getAttribute('aria-labelledby')).toBe(svg?.querySelector('title')?.id)
    expect(svg?.getAttribute('aria-describedby')).toBe(svg?.querySelector('desc')?.id)
  })

  test('has its typeface in it, and nothing from elsewhere', () => {
    expect(made.svg).toContain(means.fontRules.replaceAll("'", "'"))
    const addresses = [...made.svg.matchAll(/(?:href|src)\s*=|url\(([^)]*)\)/g)].map(
      ([, address = '']) => address,
    )
    expect(addresses).toEqual(['data:font/woff2;base64,d09G'])
    expect(made.svg).not.toContain('<script')
  })

  test('is as high as what is in it, each line below the one before it and within the paper', () => {
    const lines = [...read(made.svg).querySelectorAll('text')]
    const places = lines.map((line) => Number(line.getAttribute('y')))
    expect(lines.map((line) => line.textContent).join(' ')).toBe(`${words.sentence} ${words.address}`)
    expect(places.length).toBeGreaterThan(2)
    expect(places).toEqual([...places].sort((one, other) => one - other))
    expect(places[0]).toBeGreaterThan(drawing.height)
    expect(places.at(-1)).toBeLessThan(made.height)
    const bare = composed(drawing, { ...words, sentence: '', address: '' }, means)
    expect(bare.height).toBeLessThan(made.height)
    expect(bare.width).toBe(made.width)
  })

  test('has what is over a drawing above it', () => {
    const { svg, height } = composed(drawing, { ...words, over: 'The sound machine' }, means)
    const document = read(svg)
    const over = Number(document.querySelector('text')?.getAttribute('y'))
    expect(over).toBeLessThan(Number(document.querySelector('svg svg')?.getAttribute('y')))
    expect(height).toBeGreaterThan(made.height)
  })
})
