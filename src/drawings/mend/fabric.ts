import { askedRow, knittedRow } from '../../mechanism/fabric.ts'
import { layouts as fabricLayouts } from '../fabric/layout.ts'
import { drawFabric, rowsOf } from '../fabric/stitches.ts'
import type { FabricView } from '../fabric/view.ts'
import { drawClip, drawHatchings } from '../shared/definitions.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, type Group } from '../shared/svg.ts'
import { edges, foot } from './layout.ts'
import type { MendView } from './view.ts'

/**
 * The fabric below the needles from its knit side, the row that is being knitted at the top; stitches that are not the
 * ones asked for are outlined and hatched. Each row keeps its place in a group that goes down with the fabric.
 */
export const drawFabricBelow = (root: Group, view: MendView): void => {
  const { layout, run, frame, indexes, prefix } = view
  const { pass } = frame.pass
  const { left, right } = edges(layout)
  const rows = layout.rows + 1
  const passes = Array.from({ length: rows }, (_, n) => pass - n)
  const fabricView: FabricView = {
    ...view,
    layout: {
      ...fabricLayouts[layout.shape],
      left,
      needles: layout.needles,
      rows,
      stitch: { width: layout.pitch, height: layout.rowHeight },
    },
    from: layout.first,
    indexes,
    passes,
    // An eye is for the face of the fabric; what lies behind it is left out.
    floatLimit: Infinity,
  }
  const band = drawGroup(root, `fabric ${layout.shape}`)
  drawHatchings(band, prefix, [{ name: 'wrong', size: 7, angle: 45, line: 'M3.5,0V7', hasGround: false }])
  const window = drawGroup(band, 'fabric-window', {
    'clip-path': drawClip(band, prefix, 'fabric', {
      x: left - 1,
      y: layout.fabric - 1,
      width: right - left + 2,
      height: foot(layout) - layout.fabric + 2,
    }),
  })
  const y = layout.fabric + (pass - view.slide) * layout.rowHeight
  const asked = passes.map((one) => askedRow(run, one))
  const came = passes.map((one) => knittedRow(run, one))
  drawFabric(
    drawGroup(window, 'going-down', { transform: `translate(0 ${px(y)})` }),
    fabricView,
    rowsOf(fabricView, -pass * layout.rowHeight, came, asked),
  )
}
