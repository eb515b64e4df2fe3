import { type NumberedPart, numberedParts } from '../../words/numbered-parts.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawList, drawShape, drawShapes, type Group, into } from '../shared/svg.ts'
import { type Placed, placeLabels, type Wanted } from './engine/labels.ts'
import type { SceneLayout } from './layout.ts'

/** The labels of a picture: where its parts are seen, in the machine's room, as labels in its layout. */
export const labelsIn = (
  layout: SceneLayout,
  wanted: readonly Wanted<NumberedPart>[],
): Placed<NumberedPart>[] => {
  const { x, y, scale } = layout.machine
  return placeLabels(
    wanted.map(({ name, points }) => ({
      name,
      points: points.map(([right, down]) => [x + right * scale, y + down * scale] as const),
    })),
    layout.margins,
  )
}

/** The line from a label's ring to its part. */
const leader = ({ x, y, to: [right, down] }: Placed<NumberedPart>, ring: number): string => {
  const length = Math.hypot(right - x, down - y)
  const share = length <= ring ? 1 : ring / length
  return `M${px(x + (right - x) * share)},${px(y + (down - y) * share)}L${px(right)},${px(down)}`
}

/** Draws labels: a number in a ring and, where there is room, the part's name, with a line to the part. */
export const drawSceneLabels = (
  parent: Group,
  layout: SceneLayout,
  labels: readonly Placed<NumberedPart>[],
  lit: NumberedPart | null,
): void => {
  const band = drawGroup(parent, 'scene-labels')
  const lines = labels.map((label) => leader(label, layout.ring))
  drawShape(band, 'path', 'scene-leader-ground', { d: lines.join('') })
  drawShape(band, 'path', 'scene-leader', { d: lines.join('') })
  drawShapes(band, 'circle', 'scene-end', labels, ({ to }) => ({ cx: px(to[0]), cy: px(to[1]), r: 2 }))
  const groups = drawShapes(band, 'g', 'scene-label', labels, ({ name, side, x, y }) => ({
    'data-name': name,
    'data-side': side,
    'data-lit': name === lit ? 'lit' : '',
    transform: `translate(${px(x)} ${px(y)})`,
  }))
  groups.each(function ({ name, side }) {
    const { number, name: words } = numberedParts[name]
    drawList(into(this), 'circle', [layout.ring], (r) => ({ r }))
    drawShapes(into(this), 'text', 'scene-number', [number], (text) => ({ y: layout.ring * 0.4, text }))
    drawShapes(into(this), 'text', 'scene-name', layout.shape === 'wide' ? [words] : [], (text) => ({
      x: side === 'left' ? -layout.ring - 6 : layout.ring + 6,
      y: 5,
      'text-anchor': side === 'left' ? 'end' : 'start',
      text,
    }))
  })
}
