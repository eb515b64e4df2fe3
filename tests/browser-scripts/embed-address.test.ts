import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  embeddedFigures,
  frameCode,
  frameHeight,
  readEmbedQuery,
  writeEmbedQuery,
} from '@/browser/embed-address.ts'
import { figures } from '@/site/figures.ts'

describe('the query of an embedded figure', () => {
  test('says what was chosen and nothing else, and reads back as it was written', () => {
    expect(writeEmbedQuery({ theme: null, scene: {} })).toBe('')
    const chosen = {
      theme: 'dark',
      scene: {
        view: 'across',
        layers: 'needles strips',
        subject: 'needle.R23',
        also: 'needle.R1 gate.1',
        hand: 'pin.12:down',
      },
    } as const
    const text = writeEmbedQuery(chosen)
    expect(text).toBe(
      '?theme=dark&view=across&layers=needles+strips&subject=needle.R23&also=needle.R1+gate.1&hand=pin.12%3Adown',
    )
    expect(readEmbedQuery(text)).toEqual({ ...chosen, troubles: [] })
  })

  test('leaves out what it can’t read, and says what in a sentence each', () => {
    const { theme, scene, troubles } = readEmbedQuery(
      '?theme=<b>&view=moon&layers=bed%20cheese&subject=needle.R5',
    )
    expect({ theme, scene }).toEqual({ theme: null, scene: { subject: 'needle.R5' } })
    expect(troubles).toHaveLength(3)
    expect(troubles[0]).toMatch(/^The colours “<b>” are not known/)
    for (const trouble of troubles) expect(trouble).toMatch(/\.$/)
  })

  test('of any text at all is read without an error, and answered in sentences of one short line', () => {
    const spiteful = fc.constantFrom(
      ...[
        'front',
        'moon',
        'constructor',
        '__proto__',
        'needles constructor',
        'needle.R5',
        'needle.R900',
        'pin.12:down',
      ],
      ...[
        'pin.12:up',
        ':::',
        'pin.12:toString',
        '<b>',
        '\u202e',
        '\u2028',
        '\ud800',
        'x'.repeat(9000),
        '%zz',
        ' ',
        '',
      ],
    )
    const value = fc.oneof(spiteful, fc.string({ unit: 'binary' }), fc.tuple(spiteful, spiteful).map(String))
    const key = fc.constantFrom('theme', 'view', 'layers', 'subject', 'also', 'hand', '__proto__', '')
    const pair = fc.tuple(key, value).map(([name, text]) => `${name}=${text}`)
    const text = fc.oneof(
      fc.array(pair, { maxLength: 8 }).map((pairs) => `?${pairs.join('&')}`),
      fc.string({ unit: 'binary' }),
    )
    fc.assert(
      fc.property(text, (query) => {
        const { troubles, ...read } = readEmbedQuery(query)
        for (const words of troubles) {
          expect(words.length).toBeLessThanOrEqual(360)
          expect(words).toMatch(/^\S.*[.]$/)
          expect(words).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u)
        }
        // What was understood can be written and read again, with nothing to say.
        expect(readEmbedQuery(writeEmbedQuery(read)).troubles).toEqual([])
      }),
      { numRuns: 500 },
    )
  })
})

describe('the code of a frame', () => {
  test('has its address, its title and its height, each as text only', () => {
    const code = frameCode('https://example.org/embed/chain/#note="><script>&at=R5', 'The "chain"', 640)
    expect(code).toBe(
      '<iframe src="https://example.org/embed/chain/#note=&quot;&gt;&lt;script&gt;&amp;at=R5" title="The &quot;chain&quot;" width="100%" height="640" style="border: 0" loading="lazy"></iframe>',
    )
  })

  test('is high enough for both shapes of every figure with its words, and no higher than a screen', () => {
    for (const id of embeddedFigures) {
      const { wide, narrow } = figures.get(id)!.sizes
      const height = frameHeight({ wide: wide.width / wide.height, narrow: narrow.width / narrow.height })
      expect(height - (320 * narrow.height) / narrow.width, id).toBeGreaterThanOrEqual(150)
      expect(height, id).toBeLessThanOrEqual(720)
    }
  })
})
