import { hatch } from '../shared/definitions.ts'
import { outline, polyline, px } from '../shared/paths.ts'
import { drawGroup, drawShape, type Group } from '../shared/svg.ts'
import type { EndPlace } from './layout.ts'
import type { CardView, Side } from './view.ts'

/**
 * An end of the reader, in pixels from the drum's axis with the card's front run at the left: the right end as it is,
 * the left end mirrored. A tooth of the ratchet is a row of the card.
 */
const teeth = 12
export const drumRadius = 42.4
const ratchet = { inner: 18, outer: 24.5 }
const step = 360 / teeth

/** Angle, clockwise from the right, at which a pawl ends its push; it begins one tooth lower for each row. */
const pushEnds = 8

const polar = (radius: number, degrees: number): [number, number] => {
  const angle = (degrees * Math.PI) / 180
  return [radius * Math.cos(angle), radius * Math.sin(angle)]
}

/** The ratchet, with the drum still `rows` rows from its place. */
const ratchetShape = (rows: number): string =>
  outline(
    Array.from({ length: teeth }, (_, n) => pushEnds + (rows - n) * step).flatMap((angle) => [
      polar(ratchet.inner, angle),
      polar(ratchet.outer, angle),
    ]),
  )

/** The studs of the drum that carry the card, one a row. */
const studs = (rows: number): string =>
  Array.from({ length: teeth }, (_, n) => {
    const angle = 90 + (rows - n) * step
    return polyline([polar(drumRadius, angle), polar(drumRadius + 5, angle)])
  }).join('')

/** Where a pawl's tip is, in degrees, and how far it has been lifted over the teeth, in pixels. */
const tipOf = (view: CardView, side: Side): { angle: number; lift: number } => {
  const stroke = step * (view.frame.condition.pawlDouble ? 2 : 1)
  const rest = pushEnds + stroke
  if (view.phase === null || view.side !== side || view.steps === 0) return { angle: rest, lift: 0 }
  if (view.push > 0) return { angle: pushEnds + stroke * view.push, lift: 0 }
  const returned = 1 - view.back
  return { angle: pushEnds + stroke * returned, lift: 6 * Math.sin(Math.PI * returned) }
}

/** Where the pawls' slides run, from the drum's axis. */
export const slideX = 50

/** A pawl: a finger on a slide, its tip behind a tooth. A dead one has fallen away from the wheel. */
const drawPawl = (group: Group, view: CardView, side: Side): void => {
  const isDead = view.frame.condition.pawlDead[side]
  const { angle, lift } = tipOf(view, side)
  const [tipX, tipY] = isDead ? [34, 38] : polar(ratchet.outer - 2.5 + lift, angle + 2)
  const pivotY = polar(ratchet.outer, angle)[1] + 18
  const [dx, dy] = [tipX - slideX, tipY - pivotY]
  const length = Math.hypot(dx, dy)
  const [nx, ny] = [(-dy / length) * 3.4, (dx / length) * 3.4]
  const isBroken = isDead || view.broken.has('pawl')
  drawShape(group, 'path', 'slide', { d: `M${slideX - 3},${px(pivotY - 8)}h6V74h-6Z` })
  drawShape(group, 'path', 'pawl', {
    d: outline([
      [slideX + nx, pivotY + ny],
      [tipX + nx * 0.3, tipY + ny * 0.3],
      [tipX - nx * 0.7, tipY - ny * 0.7],
      [slideX - nx, pivotY - ny],
    ]),
    'data-look': isBroken ? 'broken' : '',
    fill: isBroken ? hatch(view.prefix, 'broken') : '',
    'data-part': `pawl.${side}`,
  })
  drawShape(group, 'circle', 'axle', { cx: slideX, cy: px(pivotY), r: 3 })
}

/** The stroke of a pawl that steps two rows, as an arc beside the wheel. */
const drawStroke = (group: Group, view: CardView): void => {
  const isDouble = view.frame.condition.pawlDouble
  const points = Array.from({ length: 13 }, (_, n) =>
    polar(ratchet.outer + 6, pushEnds + (step * 2 * n) / 12),
  )
  const [x, y] = polar(ratchet.outer + 6, pushEnds)
  const head = `M${px(x - 4)},${px(y + 5)}L${px(x)},${px(y)}l4.5,5`
  drawShape(group, 'path', 'stroke', { d: isDouble ? polyline(points) + head : '' })
}

/** The lock: a lever that falls between two teeth and holds the wheel. */
const drawLock = (group: Group, view: CardView): void => {
  const isLocked = view.frame.condition.cardLocked
  const [x, y] = isLocked ? polar(ratchet.inner + 1, 217) : [-27, -24]
  drawShape(group, 'path', 'lock', {
    d: outline([
      [-33, -33],
      [-27, -38],
      [x + 1.5, y - 1.5],
      [x - 1.5, y + 1.5],
    ]),
    'data-look': isLocked ? 'broken' : '',
    fill: isLocked ? hatch(view.prefix, 'broken') : '',
  })
}

/** One end of the reader: the drum with its studs, the ratchet and the pawl of that side. */
export const drawEnd = (root: Group, view: CardView, side: Side, place: EndPlace): void => {
  const mirror = side === 'left' ? -place.scale : place.scale
  const group = drawGroup(root, `end ${side}-end`, {
    transform: `translate(${place.x} ${place.y}) scale(${mirror} ${place.scale})`,
  })
  const isActing = view.side === side && view.isPast && view.steps > 0
  drawShape(group, 'circle', 'drum', { r: drumRadius })
  drawShape(group, 'path', 'studs', { d: studs(view.rows) })
  drawShape(group, 'path', 'amber', { d: isActing ? `M${slideX},74V26L24,12` : '' })
  drawShape(group, 'path', 'ratchet', { d: ratchetShape(view.rows) })
  drawShape(group, 'circle', 'axle', { r: 5 })
  drawPawl(drawGroup(group, 'pawl-group'), view, side)
  drawStroke(group, view)
  drawLock(drawGroup(group, 'lock-group'), view)
}
