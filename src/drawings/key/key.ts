import { select } from 'd3'
import { project } from '../place/projection.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, setSize } from '../shared/svg.ts'
import { origin, pieces, size, spots } from './shape.ts'

/** A stage of the chain whose place a detail can show. */
export type KeyStage = 'card' | 'pin' | 'sweep' | 'rocker' | 'strip' | 'hold' | 'gate' | 'needle'

/**
 * The key: the machine of figure 0 very small, with a stage's place filled and ringed, so that a reader of a detail
 * knows where she is. Draws into an empty `svg` or onto what an earlier call drew there. Null marks nothing.
 */
export const drawKey = (svg: SVGSVGElement, stage: KeyStage | null): void => {
  setSize(svg, size)
  const root = drawGroup(select<SVGGElement, null>(svg), 'key')
  drawShapes(drawGroup(root, 'key-machine'), 'path', 'piece', pieces, ({ name, path }) => ({
    'data-look': name,
    d: path,
  }))
  const spot = stage === null ? null : spots[stage]
  drawShape(root, 'path', 'key-place', { d: spot?.shape ?? '' })
  const [x, y] = project(origin, spot?.middle ?? [0, 0, 0])
  drawShape(root, 'circle', 'key-ring', { display: spot ? 'inline' : 'none', cx: px(x), cy: px(y), r: 8 })
}
