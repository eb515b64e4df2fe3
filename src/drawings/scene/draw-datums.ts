import { type PicturePoint, polyline } from '../shared/paths.ts'
import { drawGroup, drawShape, type Group } from '../shared/svg.ts'
import { type Camera, project } from './engine/camera.ts'
import { inLayout } from './draw-labels.ts'
import { drawMeasureWords } from './draw-measures.ts'
import { boxOf, type Line, type PlacedWords, type WordsPlace } from './place-measures.ts'
import { type Box, isOver } from './draw-step.ts'
import type { Datum } from './measure.ts'
import type { StepLayout } from './step-layout.ts'

/** A level as it lies in a picture: its line, and its name with the room that it takes. */
interface PlacedDatum extends PlacedWords {
  readonly line: Line
}

/** How far above its line a level's name is, in letters. */
const above = 0.4

/** Places levels as a camera sees them: each with its name over one of its ends, clear of what is `taken`. */
export const placeDatums = (
  layout: StepLayout,
  camera: Camera,
  datums: readonly Datum[],
  taken: readonly Box[],
): PlacedDatum[] =>
  datums.flatMap(({ from, to, words }) => {
    const [one, other] = [from, to].map((point) => inLayout(layout, project(camera, point)))
    const [left, right] = [one!, other!].sort(([a], [b]) => a - b) as [PicturePoint, PicturePoint]
    const up = layout.letters * above
    const places: readonly WordsPlace[] = [
      { at: [left[0], left[1] - up], anchor: 'start' },
      { at: [right[0], right[1] - up], anchor: 'end' },
    ]
    const free = places
      .map((place) => ({ ...place, box: boxOf(words, place.at, place.anchor, layout.letters) }))
      .find(({ box }) => !taken.some((own) => isOver(box, own)))
    return free ? [{ line: [left, right] as const, words, ...free }] : []
  })

/** Draws levels: chain lines with their names. */
export const drawDatums = (parent: Group, datums: readonly PlacedDatum[]): void => {
  const band = drawGroup(parent, 'scene-datums')
  drawShape(band, 'path', 'scene-datum', { d: datums.map(({ line }) => polyline([...line])).join('') })
  drawMeasureWords(band, datums)
}
