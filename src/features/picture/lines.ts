/** The width of words in pixels. */
export type Measure = (words: string) => number

/** Pieces of a text that a line may end after: words, and within what is too wide for a line, single characters. */
const pieces = (text: string, width: number, measure: Measure): string[] =>
  text
    .split(/(?<=[\s&?#])/)
    .flatMap((piece) => (measure(piece.trimEnd()) <= width ? [piece] : Array.from(piece)))

/** A text broken into lines of at most this width; a link breaks between its keys, and where it must anywhere. */
export const inLines = (text: string, width: number, measure: Measure): string[] => {
  const lines: string[] = []
  let line = ''
  for (const piece of pieces(text, width, measure)) {
    if (line !== '' && measure((line + piece).trimEnd()) > width) {
      lines.push(line.trimEnd())
      line = ''
    }
    line += piece
  }
  return line.trim() === '' ? lines : [...lines, line.trimEnd()]
}
