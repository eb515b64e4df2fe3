import { allColumns, type Column, ofColumn } from '../../mechanism/indices.ts'
import { holeNow, holePresented, midHeight } from '../../mechanism/pin.ts'
import { drawByLook, emptyPaths } from '../shared/by-look.ts'
import { px, ring } from '../shared/paths.ts'
import { drawGroup, type Group } from '../shared/svg.ts'
import { columnX, perMm } from './layout.ts'
import type { CardView } from './view.ts'

const kinds = ['hidden', 'through', 'pushed', 'stopped', 'broken'] as const
type Kind = (typeof kinds)[number]

/** How the pin of a column is seen from the front: behind the card, through its hole, or stopped by its edge. */
const kindOf = (view: CardView, column: Column): Kind => {
  const { condition, pass, pinHeights, pinLeans } = view.frame
  if (view.drop > 0.3) return 'hidden'
  if (view.broken.has(`pin.${column}`)) return 'broken'
  if (ofColumn(pinLeans, column) > 0) return 'pushed'
  if (ofColumn(pinHeights, column) > midHeight(condition.dimensions)) return 'through'
  const isStopped =
    pass.row !== null && holeNow(condition, pass.row, column) && !holePresented(condition, pass.row, column)
  return isStopped ? 'stopped' : 'hidden'
}

const cross = (x: number, y: number, r: number): string =>
  `M${px(x - r)},${px(y - r)}L${px(x + r)},${px(y + r)}M${px(x - r)},${px(y + r)}L${px(x + r)},${px(y - r)}`

/** The pins at their own places under the row being read, to the scale of the card. */
export const drawPins = (root: Group, view: CardView): void => {
  const { layout } = view
  const radius = (view.frame.condition.dimensions.pin / 2) * perMm(layout)
  const paths = emptyPaths(kinds)
  for (const column of allColumns) {
    const kind = kindOf(view, column)
    const [x, y] = [columnX(layout, column), layout.reading]
    paths[kind] += kind === 'stopped' ? cross(x, y, radius + 0.5) : ring(x, y, radius)
  }
  drawByLook(drawGroup(root, 'pin-row'), 'pin-end', 'data-kind', kinds, paths)
}
