import { drawHatchings, drawWindowClip } from '../shared/definitions.ts'
import type { Group } from '../shared/svg.ts'
import type { FabricView } from './view.ts'

/** The hatching of stitches that differ, without a ground of its own, and the window's clip. */
export const drawDefinitions = (root: Group, { layout, prefix }: FabricView): void => {
  drawHatchings(root, prefix, [{ name: 'wrong', size: 7, angle: 45, line: 'M3.5,0V7', hasGround: false }])
  drawWindowClip(root, prefix, {
    x: layout.left - 1,
    y: 0,
    width: layout.needles * layout.stitch.width + 2,
    height: layout.height,
  })
}
