import type { ClassScene } from './shared/step.ts'
import { splitSentences } from './split-sentences.ts'

/** Sizes of the text, largest first, in units of the smallest that is readable from the back of a room. */
export const sizes = { column: [1.35, 1.2, 1.1, 1], screen: [2, 1.75, 1.5, 1.2, 1] } as const

/** A text laid out on the screen, part by part. */
export interface TextLayout {
  readonly parts: number
  /** Shows one part; the last where there are fewer. */
  readonly show: (part: number) => void
}

/** A run of pieces, from index `first` to `last`, both included. */
interface Range {
  readonly first: number
  readonly last: number
}

/**
 * Divides `count` pieces into as few ranges as fit on a screen each, in order. A piece that does not even fit alone has a
 * range of its own.
 */
const divide = (count: number, fits: (range: Range) => boolean): Range[] => {
  const ranges: Range[] = []
  let range: Range = { first: 0, last: 0 }
  for (let n = 1; n < count; n++) {
    const longer = { first: range.first, last: n }
    if (fits(longer)) range = longer
    else {
      ranges.push(range)
      range = { first: n, last: n }
    }
  }
  return [...ranges, range]
}

const isOff = (element: Element): boolean => element.hasAttribute('data-off')

/** Shows a range of pieces and hides the others, and each holder of which all pieces are hidden. */
const showRange = (
  pieces: readonly HTMLElement[],
  holders: Iterable<HTMLElement>,
  { first, last }: Range,
): void => {
  for (const [n, piece] of pieces.entries()) piece.toggleAttribute('data-off', n < first || n > last)
  for (const holder of holders)
    holder.toggleAttribute('data-off', !pieces.some((piece) => holder.contains(piece) && !isOff(piece)))
}

/**
 * Lays a scene's text out in a box that does not scroll: in as few parts as the smallest size allows, in the largest of
 * `from` that needs no more. A paragraph too long for the screen is split into its sentences.
 */
export const layOut = (
  box: HTMLElement,
  { pieces, holders }: Pick<ClassScene, 'pieces' | 'holders'>,
  from: readonly number[],
): TextLayout => {
  const allHolders = new Set(holders)
  const show = (range: Range): void => {
    showRange(shown, allHolders, range)
  }
  const fits = (range: Range): boolean => {
    show(range)
    return box.scrollHeight <= box.clientHeight
  }
  const setSize = (size: number): void => {
    box.style.setProperty('--text', `${size}rem`)
  }
  for (const piece of pieces)
    for (const off of piece.querySelectorAll('[data-off]')) off.removeAttribute('data-off')
  setSize(1)
  let shown = [...pieces]
  const long = shown.filter((piece, n) => piece.matches('p') && !fits({ first: n, last: n }))
  shown = shown.flatMap((piece) => {
    if (!long.includes(piece)) return [piece]
    piece.removeAttribute('data-off')
    allHolders.add(piece)
    return splitSentences(piece)
  })
  const fewest = divide(shown.length, fits)
  let ranges = fewest
  for (const size of from) {
    setSize(size)
    ranges = divide(shown.length, fits)
    if (ranges.length === fewest.length && ranges.every(fits)) break
  }
  return {
    parts: ranges.length,
    show: (part) => {
      const range = ranges[Math.min(part, ranges.length - 1)]
      if (range) show(range)
    },
  }
}
