import { change, type Group, part } from '../svg.ts'
import type { View } from './view.ts'

/** The hatching of stitches that differ, without a ground of its own, and the window's clip. */
export const drawDefinitions = (root: Group, view: View): void => {
  const { layout, prefix } = view
  const defs = part(root, 'g', 'definitions')
  const hatching = part(defs, 'pattern', 'hatching')
  change(hatching, 'id', () => `${prefix}-wrong`)
  hatching
    .attr('width', 7)
    .attr('height', 7)
    .attr('patternUnits', 'userSpaceOnUse')
    .attr('patternTransform', 'rotate(45)')
  part(hatching as unknown as Group, 'path', 'hatch-wrong').attr('d', 'M3.5,0V7')
  const clip = part(defs, 'clipPath', 'window-clip')
  change(clip, 'id', () => `${prefix}-window`)
  part(clip as unknown as Group, 'rect', 'window-box')
    .attr('x', layout.left - 1)
    .attr('y', 0)
    .attr('width', layout.needles * layout.stitch.width + 2)
    .attr('height', layout.height)
}
