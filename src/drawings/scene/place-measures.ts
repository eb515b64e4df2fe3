import type { PicturePoint } from '../shared/paths.ts'
import { type Camera, project } from './engine/camera.ts'
import { isCrossing } from './engine/labels.ts'
import type { Vector } from './engine/vector.ts'
import { inLayout } from './draw-labels.ts'
import { type Box, isOver } from './draw-step.ts'
import type { Measure } from './measure.ts'
import type { StepLayout } from './step-layout.ts'

export type Line = readonly [PicturePoint, PicturePoint]

type Anchor = 'start' | 'middle' | 'end'

/** Where words begin, end or have their middle. */
export interface WordsPlace {
  readonly at: PicturePoint
  readonly anchor: Anchor
}

/** Words as they lie in a picture, with the room that they take. */
export interface PlacedWords extends WordsPlace {
  readonly words: string
  readonly box: Box
}

/** A dimension as it lies in a picture: what it measures, its line, and its words. */
export interface PlacedMeasure extends PlacedWords {
  readonly ends: Line
  readonly line: Line
}

/** Dimensions that are shorter than this, in pixels, are seen end on: they are not drawn. */
const shortest = 2

const sum = ([x, y, z]: Vector, [right, back, up]: Vector): Vector => [x + right, y + back, z + up]

/** The room that words take, from where they begin, end or have their middle. */
export const boxOf = (words: string, [x, y]: PicturePoint, anchor: Anchor, letters: number): Box => {
  const width = words.length * letters * 0.52
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2
  return { left, top: y - letters * 0.85, width, height: letters * 1.1 }
}

/** How many lines of words there may be beyond the end of a line. */
const rows = 3

/** How far beyond an end of a line that lies its words are, in letters: beyond the arrows, which may be outside it. */
const beyondArrow = 1.3

/**
 * Where the words of a dimension may be: beside an upright line, on the side of the nearer margin; above one that lies; or
 * beyond one of its ends.
 */
const wordsPlaces = (
  [[x1, y1], [x2, y2]]: PlacedMeasure['line'],
  lettered: Measure['lettered'],
  part: number,
  { width, letters }: StepLayout,
): readonly WordsPlace[] => {
  const [x, y] = [(x1 + x2) / 2, (y1 + y2) / 2]
  if (Math.abs(y2 - y1) <= Math.abs(x2 - x1)) {
    const over: WordsPlace = { at: [x, Math.min(y1, y2) - letters * 0.55], anchor: 'middle' }
    if (!lettered) return [over]
    const [[end, level], isLeft] = lettered === 'from' ? [[x1, y1], x1 < x2] : [[x2, y2], x2 < x1]
    const aside = (isLeft ? -beyondArrow : beyondArrow) * letters
    return [{ at: [end + aside, level + letters * 0.35], anchor: isLeft ? 'end' : 'start' }, over]
  }
  if (lettered) {
    const [end, other] = lettered === 'from' ? [y1, y2] : [y2, y1]
    const up = end <= other
    // They lean away from what is measured, where there is room.
    const leans = x < part ? [-1, 1] : [1, -1]
    return Array.from({ length: rows }, (_, row) =>
      up ? end - letters * (0.95 + 1.15 * row) : end + letters * (1.5 + 1.15 * row),
    ).flatMap((down) =>
      leans.map((lean) => ({
        at: [x - lean * letters * 0.5, down] as const,
        anchor: lean > 0 ? ('start' as const) : ('end' as const),
      })),
    )
  }
  const [left, right]: readonly WordsPlace[] = [
    { at: [x - 9, y + letters * 0.35], anchor: 'end' },
    { at: [x + 9, y + letters * 0.35], anchor: 'start' },
  ]
  return x < width / 2 ? [left!, right!] : [right!, left!]
}

/** The lines of a dimension: its own, and those to what it measures. */
const linesOf = ({ ends, line }: PlacedMeasure): Line[] => [line, [ends[0], line[0]], [ends[1], line[1]]]

/** How many lines go through the room of words. */
export const crossings = ({ left, top, width, height }: Box, lines: readonly Line[]): number => {
  const [right, low] = [left + width, top + height]
  const diagonals: readonly Line[] = [
    [
      [left, top],
      [right, low],
    ],
    [
      [left, low],
      [right, top],
    ],
  ]
  // What goes through a rectangle from side to side goes through one of its diagonals.
  return lines.filter(([from, to]) => diagonals.some(([one, other]) => isCrossing(from, to, one, other)))
    .length
}

/** The room of words with so much at either side that others don't read as their next ones. */
const apart = (box: Box, letters: number): Box => ({
  ...box,
  left: box.left - letters,
  width: box.width + 2 * letters,
})

/** Whether words are in the picture. */
const isIn = ({ width, height }: StepLayout, box: Box): boolean =>
  box.left >= 0 && box.top >= 0 && box.left + box.width <= width && box.top + box.height <= height

/**
 * Places dimensions of the machine in a picture as a camera sees them, as far as there is room for their words, the first
 * ones first. Words keep clear of one another, and where they can of `leaders`.
 */
export const placeMeasures = (
  layout: StepLayout,
  camera: Camera,
  measures: readonly Measure[],
  leaders: readonly Line[] = [],
): PlacedMeasure[] => {
  const place = (point: Vector): PicturePoint => inLayout(layout, project(camera, point))
  const placed: PlacedMeasure[] = []
  for (const { from, to, aside, words, lettered } of measures) {
    const line = [place(sum(from, aside)), place(sum(to, aside))] as const
    if (Math.hypot(line[1][0] - line[0][0], line[1][1] - line[0][1]) < shortest) continue
    const ends = [place(from), place(to)] as const
    const free = wordsPlaces(line, lettered, ends[0][0], layout)
      .map((each) => ({ ...each, box: boxOf(words, each.at, each.anchor, layout.letters) }))
      .filter(
        ({ box }) =>
          isIn(layout, box) && !placed.some((other) => isOver(box, apart(other.box, layout.letters))),
      )
    const lines = [...leaders, ...placed.flatMap(linesOf)]
    const [chosen] = free.toSorted((one, other) => crossings(one.box, lines) - crossings(other.box, lines))
    if (chosen) placed.push({ ends, line, words, ...chosen })
  }
  return placed
}

/** How far clear of a dimension's line, in pixels, what is written has to be. */
const clear = 4

/** The room that dimensions take in a picture: that of their lines, and that of their words. */
export const roomOfMeasures = (measures: readonly PlacedMeasure[]): Box[] =>
  measures.flatMap(({ line: [[x1, y1], [x2, y2]], box }) => [
    {
      left: Math.min(x1, x2) - clear,
      top: Math.min(y1, y2) - clear,
      width: Math.abs(x2 - x1) + 2 * clear,
      height: Math.abs(y2 - y1) + 2 * clear,
    },
    box,
  ])
