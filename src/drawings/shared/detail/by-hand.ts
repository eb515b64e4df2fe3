import { select } from 'd3'
import { drawHatchings } from '../definitions.ts'
import { drawNotes, type Label } from '../labels.ts'
import { drawLinework, type Line } from '../linework.ts'
import { drawGroup, setSize } from '../svg.ts'
import type { FigureLayout, FigureView } from '../view.ts'

/** Draws the figure of this id of something done by hand: its lines, a group for each of its pictures, and its labels. */
export const drawByHand = (
  svg: SVGSVGElement,
  id: string,
  { layout, prefix }: Pick<FigureView<FigureLayout>, 'layout' | 'prefix'>,
  pictures: Readonly<Record<string, readonly Line[]>>,
  labels: readonly Label[],
): void => {
  setSize(svg, layout, id)
  const root = drawGroup(select<SVGGElement, null>(svg), `detail by-hand ${layout.shape}`)
  drawHatchings(root, prefix)
  for (const [name, lines] of Object.entries(pictures)) drawLinework(root, name, prefix, lines)
  drawNotes(root, 'labels', labels)
}
