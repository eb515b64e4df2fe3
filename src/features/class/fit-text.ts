import { divide, stretchOf } from './divide.ts'
import { sentencesOf } from './sentences.ts'
import type { Scene } from './step.ts'

/** Sizes of the text, largest first, in units of the least that is read from the back of a room. */
export const sizes = { column: [1.35, 1.2, 1.1, 1], screen: [2, 1.75, 1.5, 1.2, 1] } as const

/** A text laid out on the screen, part by part. */
export interface Laid {
  readonly parts: number
  /** Shows one part; the last where there are fewer. */
  readonly show: (part: number) => void
}

const isOff = (element: Element): boolean => element.hasAttribute('data-off')

/** Shows a stretch of pieces and hides the others, with what holds nothing but hidden ones. */
const showStretch = (
  pieces: readonly HTMLElement[],
  holders: Iterable<HTMLElement>,
  [first, last]: [number, number],
): void => {
  for (const [n, piece] of pieces.entries()) piece.toggleAttribute('data-off', n < first || n > last)
  for (const holder of holders)
    holder.toggleAttribute('data-off', !pieces.some((piece) => holder.contains(piece) && !isOff(piece)))
}

/**
 * Lays a scene's text out in a box that does not scroll: in as few parts as the smallest size allows, in the largest of
 * `from` that needs no more. A paragraph too long for the screen goes sentence by sentence.
 */
export const layOut = (
  box: HTMLElement,
  { pieces, holders }: Pick<Scene, 'pieces' | 'holders'>,
  from: readonly number[],
): Laid => {
  const all = new Set(holders)
  const show = (stretch: [number, number]): void => {
    showStretch(shown, all, stretch)
  }
  const fits = (first: number, last: number): boolean => {
    show([first, last])
    return box.scrollHeight <= box.clientHeight
  }
  const setSize = (size: number): void => {
    box.style.setProperty('--text', `${size}rem`)
  }
  for (const piece of pieces)
    for (const off of piece.querySelectorAll('[data-off]')) off.removeAttribute('data-off')
  setSize(1)
  let shown = [...pieces]
  const long = shown.filter((piece, n) => piece.matches('p') && !fits(n, n))
  shown = shown.flatMap((piece) => {
    if (!long.includes(piece)) return [piece]
    piece.removeAttribute('data-off')
    all.add(piece)
    return sentencesOf(piece)
  })
  const least = divide(shown.length, fits)
  let starts = least
  for (const size of from) {
    setSize(size)
    starts = divide(shown.length, fits)
    const isWhole = starts.every((_, part) => fits(...stretchOf(starts, part, shown.length)))
    if (isWhole && starts.length === least.length) break
  }
  return {
    parts: starts.length,
    show: (part) => {
      show(stretchOf(starts, part, shown.length))
    },
  }
}
