import { type PicturePoint, px } from './paths.ts'
import { drawGroup, drawList, drawShapes, type Group } from './svg.ts'

/** A line of text in the picture. */
export interface Label {
  readonly text: string
  readonly x: number
  readonly y: number
  /** What the styles go by, such as "strong" or "end"; several with spaces between. */
  readonly look?: string
}

/** Draws labels, in a group of their own; the styles go by their data-look. */
export const drawTexts = (parent: Group, name: string, labels: readonly Label[]): void => {
  drawShapes(drawGroup(parent, name), 'text', 'label', labels, ({ text, x, y, look = '' }) => ({
    x: px(x),
    y: px(y),
    'data-look': look,
    text,
  }))
}

/** Draws labels of a detail, in a group of their own; the styles go by their classes. */
export const drawNotes = (parent: Group, name: string, labels: readonly Label[]): void => {
  drawList(drawGroup(parent, name), 'text', labels, ({ text, x, y, look = '' }) => ({
    class: `note ${look.trim()}`.trim(),
    x: px(x),
    y: px(y),
    text,
  }))
}

/** Lines of words below one another, from a point on. */
export const linesAt = (
  [x, y]: PicturePoint,
  step: number,
  lines: readonly Pick<Label, 'look' | 'text'>[],
): Label[] => lines.map((line, n) => ({ ...line, x, y: y + n * step }))

/** A text in one line, or where it has more than so many letters in two, parted at the space that is nearest to its middle. */
export const inLines = (text: string, most: number): readonly string[] => {
  if (text.length <= most) return [text]
  const spaces = [...text.matchAll(/ /g)].map(({ index }) => index)
  const middle = spaces.reduce(
    (best, space) => (Math.abs(space - text.length / 2) < Math.abs(best - text.length / 2) ? space : best),
    0,
  )
  return [text.slice(0, middle), text.slice(middle + 1)]
}
