import { dimensionLine, polyline, px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import type { PlacedMeasure, PlacedWords } from './place-measures.ts'

/** Writes what dimensions and levels are called, where there is room for it. */
export const drawMeasureWords = (band: Group, placed: readonly PlacedWords[]): void => {
  drawShapes(band, 'text', 'scene-measure', placed, ({ words, at: [x, y], anchor }) => ({
    x: px(x),
    y: px(y),
    'text-anchor': anchor,
    text: words,
  }))
}

/** Draws dimensions: their lines, lines from these to what they measure, and their words. */
export const drawMeasures = (parent: Group, measures: readonly PlacedMeasure[]): void => {
  const band = drawGroup(parent, 'scene-measures')
  const lines = measures.map(({ line: [[x1, y1], [x2, y2]] }) => dimensionLine(x1, y1, x2, y2)).join('')
  const extensions = measures.flatMap(({ ends, line }) => ends.map((end, n) => polyline([end, line[n]!])))
  drawShape(band, 'path', 'scene-extension', { d: extensions.join('') })
  drawShape(band, 'path', 'scene-measure-ground', { d: lines })
  drawShape(band, 'path', 'scene-measure-line', { d: lines })
  drawMeasureWords(band, measures)
}
