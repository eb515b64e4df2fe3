/**
 * Widths of Helvetica's characters in thousandths of the letters' size, by their codes from 32 on in the encoding that PDF
 * calls WinAnsi; 0 where it has none. Source: the metrics that its maker published for all who write PDF or PostScript.
 */
const widths = `
  278 278 355 556 556 889 667 191 333 333 389 584 278 333 278 278 556 556 556 556 556 556 556 556 556 556 278 278 584 584
  584 556 1015 667 667 722 722 667 611 778 722 278 500 667 556 833 722 778 667 778 722 667 611 722 667 944 667 667 611
  278 278 278 469 556 333 556 556 500 556 556 278 556 556 222 222 500 222 833 556 556 556 556 333 500 278 556 500 722 500
  500 500 334 260 334 584 0 556 0 222 556 333 1000 556 556 333 1000 667 333 1000 0 611 0 0 222 222 333 333 350 556 1000
  333 1000 500 333 944 0 500 500 278 333 556 556 556 556 260 556 333 737 370 556 584 333 737 333 400 584 333 333 333 556
  537 278 333 333 365 556 834 834 834 611 667 667 667 667 667 667 1000 722 667 667 667 667 278 278 278 278 722 722 778
  778 778 778 778 584 778 722 722 722 722 667 667 611 556 556 556 556 556 556 889 500 556 556 556 556 278 278 278 278 556
  556 556 556 556 556 556 584 611 556 556 556 556 500 556 500`
  .trim()
  .split(/\s+/)
  .map(Number)

interface Glyph {
  /** Its code in WinAnsi. */
  readonly code: number
  /** In thousandths of the letters' size. */
  readonly width: number
}

const winAnsi = new TextDecoder('windows-1252')

const glyphs = new Map(
  widths.flatMap((width, n): [string, Glyph][] => {
    const code = n + 32
    return width > 0 ? [[winAnsi.decode(Uint8Array.of(code)), { code, width }]] : []
  }),
)

/** A text as Helvetica shows it: with a question mark for each character that it lacks. */
const glyphsOf = (text: string): Glyph[] =>
  Array.from(text, (mark) => glyphs.get(mark) ?? glyphs.get('?')).filter((glyph) => glyph !== undefined)

/** The codes of a text in WinAnsi, two hexadecimal digits each. */
export const hexCodes = (text: string): string =>
  glyphsOf(text)
    .map(({ code }) => code.toString(16).padStart(2, '0'))
    .join('')

/** How wide a text is, in the unit of the letters' size. */
export const widthOf = (text: string, size: number): number =>
  (glyphsOf(text).reduce((sum, { width }) => sum + width, 0) / 1000) * size
