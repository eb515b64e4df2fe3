import { dimensionLine, type PicturePoint, polyline, px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import { type Camera, project } from './engine/camera.ts'
import type { Vector } from './engine/vector.ts'
import { inLayout } from './draw-labels.ts'
import { type Box, isOver } from './draw-step.ts'
import type { Measure } from './measure.ts'
import type { StepLayout } from './step-layout.ts'

export type Anchor = 'start' | 'middle' | 'end'

/** A dimension as it lies in a picture: what it measures, its line, and its words with the room that they take. */
interface PlacedMeasure {
  readonly ends: readonly [PicturePoint, PicturePoint]
  readonly line: readonly [PicturePoint, PicturePoint]
  readonly words: string
  readonly at: PicturePoint
  readonly anchor: Anchor
  readonly box: Box
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

interface WordsPlace {
  readonly at: PicturePoint
  readonly anchor: Anchor
}

/** How many lines of words there may be beyond the end of a line. */
const rows = 3

/** Where the words of a dimension may be: beside an upright line, on the side of the nearer margin; above one that lies; or beyond one of its ends. */
const wordsPlaces = (
  [[x1, y1], [x2, y2]]: PlacedMeasure['line'],
  lettered: Measure['lettered'],
  part: number,
  { width, letters }: StepLayout,
): readonly WordsPlace[] => {
  const [x, y] = [(x1 + x2) / 2, (y1 + y2) / 2]
  if (Math.abs(y2 - y1) <= Math.abs(x2 - x1))
    return [{ at: [x, Math.min(y1, y2) - letters * 0.55], anchor: 'middle' }]
  if (lettered) {
    const [end, other] = lettered === 'from' ? [y1, y2] : [y2, y1]
    const up = end <= other
    // They lean away from what is measured.
    const lean = Math.sign(x - part)
    return Array.from({ length: rows }, (_, row) => ({
      at: [
        x - lean * letters * 0.5,
        up ? end - letters * (0.95 + 1.15 * row) : end + letters * (1.5 + 1.15 * row),
      ],
      anchor: lean > 0 ? 'start' : lean < 0 ? 'end' : 'middle',
    }))
  }
  const [left, right]: readonly WordsPlace[] = [
    { at: [x - 9, y + letters * 0.35], anchor: 'end' },
    { at: [x + 9, y + letters * 0.35], anchor: 'start' },
  ]
  return x < width / 2 ? [left!, right!] : [right!, left!]
}

/** Whether words are in the picture. */
const isIn = ({ width, height }: StepLayout, box: Box): boolean =>
  box.left >= 0 && box.top >= 0 && box.left + box.width <= width && box.top + box.height <= height

/** Places dimensions of the machine in a picture as a camera sees them, as far as there is room for their words, the first ones first. */
export const placeMeasures = (
  layout: StepLayout,
  camera: Camera,
  measures: readonly Measure[],
): PlacedMeasure[] => {
  const place = (point: Vector): PicturePoint => inLayout(layout, project(camera, point))
  const placed: PlacedMeasure[] = []
  for (const { from, to, aside, words, lettered } of measures) {
    const line = [place(sum(from, aside)), place(sum(to, aside))] as const
    if (Math.hypot(line[1][0] - line[0][0], line[1][1] - line[0][1]) < shortest) continue
    const free = wordsPlaces(line, lettered, place(from)[0], layout)
      .map((each) => ({ ...each, box: boxOf(words, each.at, each.anchor, layout.letters) }))
      .find(({ box }) => isIn(layout, box) && !placed.some((other) => isOver(box, other.box)))
    if (free) placed.push({ ends: [place(from), place(to)], line, words, ...free })
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

/** Draws dimensions: their lines, lines from these to what they measure, and their words. */
export const drawMeasures = (parent: Group, measures: readonly PlacedMeasure[]): void => {
  const band = drawGroup(parent, 'scene-measures')
  const lines = measures.map(({ line: [[x1, y1], [x2, y2]] }) => dimensionLine(x1, y1, x2, y2)).join('')
  const extensions = measures.flatMap(({ ends, line }) => ends.map((end, n) => polyline([end, line[n]!])))
  drawShape(band, 'path', 'scene-extension', { d: extensions.join('') })
  drawShape(band, 'path', 'scene-measure-ground', { d: lines })
  drawShape(band, 'path', 'scene-measure-line', { d: lines })
  drawShapes(band, 'text', 'scene-measure', measures, ({ words, at: [x, y], anchor }) => ({
    x: px(x),
    y: px(y),
    'text-anchor': anchor,
    text: words,
  }))
}
