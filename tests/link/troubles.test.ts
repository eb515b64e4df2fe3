import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readCase } from '@/link/case.ts'
import { read } from '@/link/read.ts'
import { readSession } from '@/link/session-link.ts'
import { oneLine, quote, Troubles } from '@/link/troubles.ts'
import { library } from './library.ts'
import { mutated } from './mutated.ts'

describe('a stranger’s text in a sentence', () => {
  test.each([
    ['plain', '“plain”'],
    ['', '“”'],
    ['“quoted”', '““quoted””'],
    ['two\nlines\r\tand a tab', '“two·lines··and a tab”'],
    ['line\u2028and\u2029paragraph', '“line·and·paragraph”'],
    ['\u202eturned\u202c', '“·turned·”'],
    ['zero\u200bwidth\ufeff', '“zero·width·”'],
    ['\0\u001b[31mred\u007f\u0085', '“··[31mred··”'],
    ['half \ud83e of one', '“half · of one”'],
    ['<b>&amp;', '“<b>&amp;”'],
  ])('%j is shown as %s', (text, quoted) => expect(quote(text)).toBe(quoted))

  test('is whole at its most characters and cut beyond', () => {
    expect(oneLine('🧶🧶🧶', 3)).toBe('🧶🧶🧶')
    expect(oneLine('🧶🧶🧶🧶', 3)).toBe('🧶🧶🧶…')
    expect(quote('x'.repeat(40))).toBe(`“${'x'.repeat(40)}”`)
    expect(quote('x'.repeat(41))).toBe(`“${'x'.repeat(40)}…”`)
  })
})

describe('what there is to say about a link', () => {
  test('is said once a kind, with how many more there are, in the order of the kinds', () => {
    const troubles = new Troubles()
    troubles.changed('speed', 'The speed is 9.')
    troubles.leftOut('fault', 'No fault is x.')
    troubles.leftOut('fault', 'No fault is y.')
    troubles.leftOut('fault', 'No fault is z.')
    expect(troubles.all).toMatchObject([
      { kind: 'changed', sentence: 'The speed is 9.' },
      { kind: 'left out', sentence: 'No fault is x. And 2 more of this kind.' },
    ])
  })

  /** The most characters of a sentence, with its count. */
  const most = 330

  const readings: Readonly<Record<string, (text: string) => readonly { sentence: string }[]>> = {
    state: (text) => read(text, library).troubles,
    case: (text) => readCase(text, library).troubles,
    session: (text) => readSession(text, library).troubles,
  }

  test.each(Object.entries(readings))(
    'in a %s’s link is no longer for a hundred times the mistakes',
    (_, troublesOf) => {
      fc.assert(
        fc.property(fc.array(mutated, { minLength: 1, maxLength: 4 }), (texts) => {
          const text = texts.join('&')
          const sentences = troublesOf(text).map(({ sentence }) => sentence)
          for (const sentence of sentences) expect(sentence.length).toBeLessThanOrEqual(most)
          const kinds = new Set(sentences.map((sentence) => sentence.replace(/“[^”]*”|\d+/g, '')))
          expect(troublesOf(`${text}&`.repeat(100)).length).toBeLessThanOrEqual(kinds.size + 4)
        }),
        { numRuns: 20 },
      )
    },
  )

  test.each([
    ['state', Array.from({ length: 100 }, (_, n) => `break=strip.3.${n % 2 ? 'over' : 'seized'}`), 1],
    ['case', Array.from({ length: 99 }, (_, n) => `break=strip.${n + 9}.over`), 1],
    ['session', Array.from({ length: 300 }, (_, n) => `pass=${n + 90}.right.9.wR${n + 101}`), 4],
    ['session', Array.from({ length: 300 }, (_, n) => `check=C${n}&found=F${n}&key${n}=1`), 3],
  ])('in a %s’s link of many mistakes of few kinds is a few sentences', (name, pairs, kinds) => {
    const sentences = readings[name]!(pairs.join('&')).map(({ sentence }) => sentence)
    expect(sentences).toHaveLength(kinds)
    expect(sentences.join(' ').length).toBeLessThanOrEqual(kinds * 200)
    for (const sentence of sentences) expect(sentence).toMatch(/ \d+ (passes|more of this kind)\b/)
  })
})
