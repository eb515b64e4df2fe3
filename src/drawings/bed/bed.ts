import { select } from 'd3'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Shape } from '../shared/figure-contract.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group, setSize } from '../shared/svg.ts'
import { drawNames } from './labels.ts'
import { type BedLayout, edges, halfway, layoutOf, layouts, linesOf, needlePosition } from './layout.ts'
import { drawLegend } from './legend.ts'
import { type BedSeen, isWrong, marks, needlesByMark } from './marks.ts'
import { needlePath, signPath } from './needles.ts'

export type { BedSeen } from './marks.ts'

/** Width and height of the picture in each shape, in its own pixels, which are CSS pixels at full size. */
export const bedSizes: Readonly<Record<Shape, { readonly width: number; readonly height: number }>> = layouts

/** The same of a bed of so many needles. */
export const bedSizeOf = (
  shape: Shape,
  needles: number,
): { readonly width: number; readonly height: number } => layoutOf(shape, needles)

/** The bed itself under the needles in use, cut into its lines, with its front edge. */
const drawBody = (root: Group, layout: BedLayout, { first, last }: BedSeen): void => {
  const { front, back } = edges(layout)
  const lines = linesOf(layout, first, last).map((line) => {
    const from = needlePosition(layout, line.first)
    const left = px(from.x + halfway(layout) - layout.pitch)
    return { left, right: px(needlePosition(layout, line.last).x + halfway(layout)), y: from.y }
  })
  drawShape(root, 'path', 'seen-body', {
    d: lines
      .map(({ left, right, y }) => `M${left},${px(y + back)}H${right}V${px(y + front)}H${left}Z`)
      .join(''),
  })
  drawShape(root, 'path', 'seen-edge', {
    d: lines.map(({ left, right, y }) => `M${left},${px(y + front)}H${right}`).join(''),
  })
}

/** A line between L1 and R1, from behind the bed to between their names. */
const drawMiddle = (root: Group, layout: BedLayout, { first, last }: BedSeen): void => {
  const index = dimensions.needles / 2
  const { x, y } = needlePosition(layout, index)
  const isShown = first < index && last >= index
  drawShape(root, 'path', 'seen-middle', {
    d: isShown
      ? `M${px(x + halfway(layout) - layout.pitch)},${px(y + edges(layout).back - 5)}V${px(y + layout.names + 2)}`
      : '',
  })
}

/**
 * Draws a bed as one sees it from above after a pass, hooks to the front: selected needles stand out over its edge, and
 * each needle that is not as asked carries a sign. Draws into an empty `svg` or onto what an earlier call drew there.
 */
export const drawBed = (svg: SVGSVGElement, bed: BedSeen, { shape }: { readonly shape: Shape }): void => {
  const layout = layoutOf(shape, bed.came.length)
  setSize(svg, layout)
  const root = drawGroup(select<SVGGElement, null>(svg), `seen-bed ${shape}`)
  drawBody(root, layout, bed)
  const found = needlesByMark(bed)
  const lines = drawGroup(root, 'seen-lines')
  drawShapes(lines, 'path', 'seen-needles', marks, (mark) => ({
    'data-mark': mark,
    d: found[mark]
      .map((index) => needlePosition(layout, index))
      .map(({ x, y }) => needlePath(layout, mark, x, y))
      .join(''),
  }))
  drawShapes(lines, 'path', 'seen-signs', marks.filter(isWrong), (mark) => ({
    'data-mark': mark,
    d: found[mark]
      .map((index) => needlePosition(layout, index))
      .map(({ x, y }) => signPath(layout, mark, x, y))
      .join(''),
  }))
  drawMiddle(root, layout, bed)
  drawNames(root, layout, bed)
  drawLegend(root, layout, bed)
}
