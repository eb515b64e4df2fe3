import { type PicturePoint, px, ring } from './paths.ts'
import { drawGroup, drawList, type Drawn, drawShape, drawShapes, type Group, into } from './svg.ts'

/** A numbered balloon: a part keeps its number through the whole site. */
export interface Balloon {
  readonly number: number
  readonly x: number
  readonly y: number
  /** Where its leader line ends, if it has one. */
  readonly to?: PicturePoint
}

const radius = 9.5

/** A leader from the rim of a balloon to its part. */
const leader = ({ x, y, to }: Balloon): string => {
  if (!to) return ''
  const length = Math.hypot(to[0] - x, to[1] - y)
  if (length <= radius) return ''
  const share = radius / length
  return `M${px(x + (to[0] - x) * share)},${px(y + (to[1] - y) * share)}L${px(to[0])},${px(to[1])}`
}

/** Draws balloons without leader lines. */
export const drawBalloonHeads = (
  parent: Group,
  balloons: readonly Balloon[],
): Drawn<SVGGElement, Balloon> => {
  const heads = drawShapes(parent, 'g', 'balloon', balloons, ({ x, y }) => ({
    transform: `translate(${px(x)} ${px(y)})`,
  }))
  heads.each(function ({ number }) {
    drawList(into(this), 'circle', [radius], (r) => ({ r }))
    drawList(into(this), 'text', [number], (text) => ({ y: 4.2, text }))
  })
  return heads
}

/** Draws balloons with their leader lines, in a group of their own. */
export const drawBalloons = (parent: Group, balloons: readonly Balloon[]): Drawn<SVGGElement, Balloon> => {
  const group = drawGroup(parent, 'balloons')
  drawShape(group, 'path', 'leader', { d: balloons.map(leader).join('') })
  const ends = balloons.flatMap(({ to }) => (to ? [ring(to[0], to[1], 1.8)] : []))
  drawShape(group, 'path', 'leader-end', { d: ends.join('') })
  return drawBalloonHeads(drawGroup(group, 'balloon-heads'), balloons)
}
