import { px } from '../svg.ts'

/** Length and half-width of an arrowhead, and the span below which the arrows stand outside, in pixels. */
const head = { long: 7, half: 2.3 }
const roomForArrows = 20
const stub = 11

type Place = readonly [number, number]

/** An open arrowhead with its tip at a place, pointing along (dx, dy), a unit step. */
const arrow = ([x, y]: Place, dx: number, dy: number): string => {
  const back: Place = [x - dx * head.long, y - dy * head.long]
  const left = `${px(back[0] - dy * head.half)},${px(back[1] + dx * head.half)}`
  const right = `${px(back[0] + dy * head.half)},${px(back[1] - dx * head.half)}`
  return `M${left}L${px(x)},${px(y)}L${right}`
}

/**
 * A dimension line between two places on one level or one upright: arrows at both ends, or from outside where the span
 * is small. A span of nothing has no line.
 */
export const dimensionLine = (from: Place, to: Place): string => {
  const [width, height] = [to[0] - from[0], to[1] - from[1]]
  const span = Math.hypot(width, height)
  if (span < 0.05) return ''
  const [dx, dy] = [width / span, height / span]
  const line = (a: Place, b: Place): string => `M${px(a[0])},${px(a[1])}L${px(b[0])},${px(b[1])}`
  const isRoomy = span >= roomForArrows
  const out = isRoomy ? 0 : stub
  const ends = line([from[0] - dx * out, from[1] - dy * out], [to[0] + dx * out, to[1] + dy * out])
  const way = isRoomy ? 1 : -1
  return ends + arrow(from, -dx * way, -dy * way) + arrow(to, dx * way, dy * way)
}

/** A straight thin line, as for extension lines and leaders. */
export const thinLine = (from: Place, to: Place): string =>
  `M${px(from[0])},${px(from[1])}L${px(to[0])},${px(to[1])}`
