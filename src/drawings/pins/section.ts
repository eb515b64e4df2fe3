import { dimensions } from '../../mechanism/dimensions.ts'
import { hatch } from '../shared/definitions.ts'
import { boxPath, px } from '../shared/paths.ts'
import { drawShape, type Group } from '../shared/svg.ts'
import { wedgeEnds } from '../shared/wedge.ts'
import { columnX, levelY, rightOf } from './layout.ts'
import type { PinsView } from './view.ts'

/** Height of the belt that carries the sweep, in mm. */
export const beltHigh = 3.75

/** The most in mm that the drawing has room for above the datum. */
const ceiling = 4.1

/** How far above its place the sweep is drawn that stands clear of the pins, in mm. */
const clearBy = 1.35

/** Height of the sweep's edge as it is drawn: on the sheet, however worn. */
export const drawnEdge = (edge: number): number => Math.min(edge, ceiling)

/** Places in the picture of the middles of the sweeps that can be seen: 24 columns apart. */
export const sweepMiddles = (view: PinsView): number[] => {
  const { layout, first, sweep } = view
  const far = wedgeEnds.right * layout.perMm
  return [-1, 0, 1]
    .map((turn) => columnX(layout, first, sweep.at + turn * dimensions.columns))
    .filter((x) => x > layout.left - far && x < rightOf(layout) + far)
}

/** Lower edge and belt of the sweep as it stands, in mm above the datum. */
export const sweepLevels = ({ frame, sweep }: PinsView): { edge: number; belt: number } => {
  const up = sweep.isClear ? clearBy : 0
  return { edge: Math.min(drawnEdge(frame.condition.sweepEdge), beltHigh) + up, belt: beltHigh + up }
}

/** The piece of a sweep between two heights in mm, with its middle at `x`, from the front. */
const piece = ({ layout }: PinsView, x: number, low: number, high: number): string =>
  boxPath(
    x + wedgeEnds.left * layout.perMm,
    levelY(layout, high),
    x + wedgeEnds.right * layout.perMm,
    levelY(layout, low),
  )

/** Lines where a sweep's flat meets its ramps. */
const flatEnds = (view: PinsView, x: number, low: number, high: number): string =>
  [wedgeEnds.flatLeft, wedgeEnds.flatRight]
    .map((right) => px(x + right * view.layout.perMm))
    .map((place) => `M${place},${px(levelY(view.layout, high))}V${px(levelY(view.layout, low))}`)
    .join('')

/** The sweeps from the front, behind the legs whose upper ends their flanks push. */
export const drawSweep = (root: Group, view: PinsView): void => {
  const { layout, prefix } = view
  const seen = sweepMiddles(view)
  const { edge, belt } = sweepLevels(view)
  const y = levelY(layout, belt)
  const [left, right] = [layout.left - 20, px(rightOf(layout) + 20)]
  drawShape(root, 'path', 'belt-line', {
    d: `M${left},${px(y - 4)}H${right}M${left},${px(y)}H${right}`,
  })
  const isBroken = view.broken.has('sweep') || view.broken.has('belt')
  drawShape(root, 'path', 'sweep-tooth', {
    d: seen.map((x) => piece(view, x, edge, belt)).join(''),
    'data-look': view.sweep.isClear ? 'clear' : isBroken ? 'broken' : '',
    'data-part': 'sweep',
  })
  drawShape(root, 'path', 'flat-ends', { d: seen.map((x) => flatEnds(view, x, edge, belt)).join('') })
  const isWorn = view.frame.condition.sweepEdge - view.frame.condition.dimensions.sweepEdge > 0.01
  drawShape(root, 'path', 'sweep-worn', {
    d: isWorn
      ? seen.map((x) => piece(view, x, view.frame.condition.dimensions.sweepEdge, edge)).join('')
      : '',
    fill: hatch(prefix, 'broken'),
  })
}
