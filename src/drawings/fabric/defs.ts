import { change, type Group, keep, part } from '../shared/svg.ts'
import type { View } from './view.ts'

/** The hatching of stitches that differ, without a ground of its own, and the window's clip. */
export const drawDefinitions = (root: Group, view: View): void => {
  const { layout, prefix } = view
  const defs = part(root, 'g', 'definitions')
  const hatching = part(defs, 'pattern', 'hatching')
  change(hatching, 'id', () => `${prefix}-wrong`)
  for (const side of ['width', 'height']) keep(hatching, side, 7)
  keep(hatching, 'patternUnits', 'userSpaceOnUse')
  keep(hatching, 'patternTransform', 'rotate(45)')
  keep(part(hatching as unknown as Group, 'path', 'hatch-wrong'), 'd', 'M3.5,0V7')
  const clip = part(defs, 'clipPath', 'window-clip')
  change(clip, 'id', () => `${prefix}-window`)
  const box = part(clip as unknown as Group, 'rect', 'window-box')
  keep(box, 'x', layout.left - 1)
  keep(box, 'y', 0)
  keep(box, 'width', layout.needles * layout.stitch.width + 2)
  keep(box, 'height', layout.height)
}
