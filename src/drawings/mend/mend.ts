import { select } from 'd3'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { numberedParts } from '../../words/numbered-parts.ts'
import { drawBalloons } from '../shared/balloons.ts'
import { drawHatchings, drawWindowClip } from '../shared/definitions.ts'
import { drawGroup, drawShapes, type Group, setSize } from '../shared/svg.ts'
import { drawFabricBelow } from './fabric.ts'
import { edges, type MendLayout } from './layout.ts'
import { drawNeedles } from './needles.ts'
import { drawStrips } from './strips.ts'
import { drawTrail } from './trail.ts'
import { type MendOptions, viewOf } from './view.ts'

/** What is where, at the left of the wide picture: the parts with their numbers, and the fabric. */
const drawNames = (root: Group, layout: MendLayout): void => {
  if (layout.shape === 'narrow') return
  const parts = [
    { ...numberedParts.strip, y: layout.strips + 3.5 * layout.stripSpacing },
    { ...numberedParts.catch, y: layout.line - 22 },
    { ...numberedParts.needle, y: layout.line + 24 },
  ]
  drawBalloons(
    drawGroup(root, 'numbers'),
    parts.map(({ number, y }) => ({ number, x: 12, y })),
  )
  const names = [...parts, { name: 'fabric', y: layout.fabric + 8 }]
  drawShapes(root, 'text', 'band-name', names, ({ name, y }) => ({ x: 28, y: y + 4.5, text: name }))
}

/**
 * Draws what one part does to the fabric: the strips, the needles sorted by them under the passing carriage, and the
 * fabric that they knit, from above; where a strip is broken, a line leads from the fabric up to it. Keeps nothing
 * between calls.
 */
export const drawMend = (svg: SVGSVGElement, run: Run, frame: Frame, options: MendOptions): void => {
  const view = viewOf(run, frame, options)
  const { layout, prefix } = view
  const { left, right } = edges(layout)
  setSize(svg, layout)
  const root = drawGroup(select<SVGGElement, null>(svg), `mend chain ${layout.shape}`)
  drawHatchings(root, prefix)
  drawWindowClip(root, prefix, { x: left - 12, y: 0, width: right - left + 24, height: layout.height })
  drawStrips(root, view)
  drawFabricBelow(root, view)
  drawTrail(root, view)
  drawNeedles(root, view)
  drawNames(root, layout)
}
