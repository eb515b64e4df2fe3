import { describe, expect, it } from 'vitest'
import { oneLine, quote } from '@/link/troubles.ts'

describe('a stranger’s text in a sentence', () => {
  it.each([
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
  ])('%j stands as %s', (text, quoted) => expect(quote(text)).toBe(quoted))

  it('is whole at its most characters and cut beyond', () => {
    expect(oneLine('🧶🧶🧶', 3)).toBe('🧶🧶🧶')
    expect(oneLine('🧶🧶🧶🧶', 3)).toBe('🧶🧶🧶…')
    expect(quote('x'.repeat(40))).toBe(`“${'x'.repeat(40)}”`)
    expect(quote('x'.repeat(41))).toBe(`“${'x'.repeat(40)}…”`)
  })
})
