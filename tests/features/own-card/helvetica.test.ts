import { Encodings, Font, FontNames } from '@cantoo/pdf-lib/standard-fonts'
import { describe, expect, test } from 'vitest'
import { hexCodes, widthOf } from '@/features/own-card/helvetica.ts'

const published = Font.load(FontNames.Helvetica)

describe('the characters of Helvetica', () => {
  test.each(
    Encodings.WinAnsi.supportedCodePoints.map((point) => [String.fromCodePoint(point), point] as const),
  )('“%s” has the code and the width that were published', (mark, point) => {
    const { code, name } = Encodings.WinAnsi.encodeUnicodeCodePoint(point)
    expect(parseInt(hexCodes(mark), 16)).toBe(code)
    expect(widthOf(mark, 1000)).toBeCloseTo(published.getWidthOfGlyph(name) ?? NaN, 9)
  })

  test.each(['Ё', '\n', '\u007f', '\u0081', '織'])(
    '“%s” is none of them and becomes a question mark',
    (mark) => {
      expect(hexCodes(mark)).toBe(hexCodes('?'))
      expect(widthOf(mark, 12)).toBe(widthOf('?', 12))
    },
  )

  test('add up to a text', () => {
    expect(hexCodes('A€')).toBe('4180')
    expect(widthOf('12 again', 10)).toBeCloseTo(
      Array.from('12 again').reduce((sum, mark) => sum + widthOf(mark, 10), 0),
      9,
    )
  })
})
