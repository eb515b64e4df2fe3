import { type PicturePoint, polyline, px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import { type Camera, project } from './engine/camera.ts'
import { inLayout } from './draw-labels.ts'
import { type Anchor, boxOf } from './place-measures.ts'
import { type Box, isOver } from './draw-step.ts'
import type { Datum } from './measure.ts'
import type { StepLayout } from './step-layout.ts'

/** A level as it lies in a picture: its line, and its name with the room that it takes. */
interface PlacedDatum {
  readonly line: readonly [PicturePoint, PicturePoint]
  readonly words: string
  readonly at: PicturePoint
  readonly anchor: Anchor
  readonly box: Box
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
    const places: readonly { readonly at: PicturePoint; readonly anchor: Anchor }[] = [
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
  drawShapes(band, 'text', 'scene-measure', datums, ({ words, at: [x, y], anchor }) => ({
    x: px(x),
    y: px(y),
    'text-anchor': anchor,
    text: words,
  }))
}
