import { select } from 'd3'
import { origin, pieces, size, spots } from './shape.ts'
import { placeOf } from '../place/projection.ts'
import { change, part, parts, px, setSize } from '../shared/svg.ts'

/** A stage of the chain whose place a detail can show. */
export type KeyStage = 'card' | 'pin' | 'sweep' | 'rocker' | 'strip' | 'hold' | 'gate' | 'needle'

/**
 * The key: the machine of figure 0 very small, with a stage's place filled and ringed, so that a reader of a detail
 * knows where she is. Draws into an empty `svg` or onto what an earlier call drew there. Null marks nothing.
 */
export const drawKey = (svg: SVGSVGElement, stage: KeyStage | null): void => {
  setSize(svg, size)
  const root = part(select<SVGGElement, null>(svg), 'g', 'key')
  const drawn = parts(part(root, 'g', 'key-machine'), 'path', 'piece', pieces)
  change(drawn, 'data-look', ({ name }) => name)
  change(drawn, 'd', ({ path }) => path)
  const spot = stage === null ? null : spots[stage]
  change(part(root, 'path', 'key-place'), 'd', () => spot?.shape ?? '')
  const [x, y] = placeOf(origin, spot?.middle ?? [0, 0, 0])
  const ring = part(root, 'circle', 'key-ring')
  change(ring, 'display', () => (spot ? 'inline' : 'none'))
  change(ring, 'cx', () => px(x))
  change(ring, 'cy', () => px(y))
  change(ring, 'r', () => 8)
}
