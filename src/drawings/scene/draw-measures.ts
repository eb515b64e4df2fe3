import { dimensionLine, type PicturePoint, polyline, px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import { type Camera, project } from './engine/camera.ts'
import type { Vector } from './engine/vector.ts'
import { inLayout } from './draw-labels.ts'
import type { Box } from './draw-step.ts'
import type { Measure } from './measures.ts'
import type { StepLayout } from './step-layout.ts'

type Anchor = 'start' | 'middle' | 'end'

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

/** The room that a dimension's words take, from where they begin, end or have their middle. */
const boxOf = (words: string, [x, y]: PicturePoint, anchor: Anchor, letters: number): Box => {
  const width = words.length * letters * 0.52
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2
  return { left, top: y - letters * 0.85, width, height: letters * 1.1 }
}

/** Where the words of a dimension are: beside an upright line, on the side of the nearer margin; above one that lies. */
const wordsPlace = (
  [[x1, y1], [x2, y2]]: PlacedMeasure['line'],
  { width, letters }: StepLayout,
): { readonly at: PicturePoint; readonly anchor: Anchor } => {
  const [x, y] = [(x1 + x2) / 2, (y1 + y2) / 2]
  if (Math.abs(y2 - y1) <= Math.abs(x2 - x1))
    return { at: [x, Math.min(y1, y2) - letters * 0.55], anchor: 'middle' }
  return x < width / 2
    ? { at: [x - 9, y + letters * 0.35], anchor: 'end' }
    : { at: [x + 9, y + letters * 0.35], anchor: 'start' }
}

/** Places dimensions of the machine in a picture as a camera sees them; on a phone there is room for the first. */
export const placeMeasures = (
  layout: StepLayout,
  camera: Camera,
  measures: readonly Measure[],
): PlacedMeasure[] => {
  const place = (point: Vector): PicturePoint => inLayout(layout, project(camera, point))
  return (layout.shape === 'wide' ? measures : measures.slice(0, 1)).flatMap(({ from, to, aside, words }) => {
    const line = [place(sum(from, aside)), place(sum(to, aside))] as const
    if (Math.hypot(line[1][0] - line[0][0], line[1][1] - line[0][1]) < shortest) return []
    const { at, anchor } = wordsPlace(line, layout)
    const box = boxOf(words, at, anchor, layout.letters)
    return [{ ends: [place(from), place(to)], line, words, at, anchor, box }]
  })
}

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
