import { dimensions } from '../../mechanism/dimensions.ts'
import { hatch } from '../shared/definitions.ts'
import { boxPath, outline, type PicturePoint, polyline, px } from '../shared/paths.ts'
import { drawShape, type Group } from '../shared/svg.ts'
import { forwardOf } from '../shared/wedge.ts'
import { pinLook } from './columns.ts'
import { levelY, type PinsLayout } from './layout.ts'
import { sweepLevels } from './section.ts'
import type { PinsView } from './view.ts'

/** One pin from the right-hand side, in mm: from leg to leg, how far the U goes down, half its wire, and the card's thickness. */
const apart = 3
const bottom = 3.3
const wire = dimensions.pin / 2
const cardThick = 0.2
/** Where the lift spring stands, in mm below the top plate: lower than any pin comes. */
export const springFoot = 6.4
/** Where both legs are in the picture: the front leg is on the left, and comes further to the front as it is pushed. */
export const legsX = ({ layout, focus }: PinsView): { front: number; back: number } => {
  const { profile, perMm } = layout
  return {
    front: (profile ?? 0) - forwardOf(Math.abs(focus.lean)) * perMm,
    back: (profile ?? 0) + apart * perMm,
  }
}

/** The pin as one bent wire, with a tip at the end of each leg. */
const wireShape = (view: PinsView): string => {
  const { layout, focus } = view
  const { front, back } = legsX(view)
  const w = wire * layout.perMm
  const [tip, foot] = [
    levelY(layout, focus.height),
    levelY(layout, focus.height - view.frame.condition.dimensions.pinHigh - bottom),
  ]
  const inner = foot - 2 * w
  const dome = (x: number): string => `A${px(w)},${px(w)} 0 0 1 ${px(x + w)},${px(tip + w)}`
  return (
    `M${px(front - w)},${px(tip + w)}${dome(front)}V${px(inner)}H${px(back - w)}V${px(tip + w)}` +
    `${dome(back)}V${px(foot)}H${px(front - w)}Z`
  )
}

/** The lift spring under the back of the U. */
const liftSpring = (layout: PinsLayout, x: number, top: number): string => {
  const end = levelY(layout, -springFoot)
  const half = 0.45 * layout.perMm
  const points: PicturePoint[] = [[x, top]]
  for (let n = 1; n < 8; n++) points.push([x + (n % 2 === 0 ? half : -half), top + ((end - top) * n) / 8])
  return polyline([...points, [x, end]])
}

/** The card over the back leg, cut along the column: it lies on the leg that it stops. */
const cardCut = (view: PinsView): string => {
  const { layout, focus } = view
  if (!focus.hasCard) return ''
  const { perMm } = layout
  const { back } = legsX(view)
  const rests = focus.fits || focus.isHigh ? view.frame.condition.dimensions.pinLow : focus.height
  const [low, high] = [levelY(layout, rests), levelY(layout, rests + cardThick)]
  const half = Math.sqrt(Math.max(0, (view.frame.condition.dimensions.hole / 2) ** 2 - focus.side ** 2))
  const pierced = focus.isHigh && !focus.fits ? wire + 0.1 : 0
  const gaps = [
    ...(focus.isHole && half > 0 ? [focus.along - half, focus.along + half] : []),
    ...(pierced > 0 ? [-pierced, pierced] : []),
  ]
  const [from, to] = [back - 2.4 * perMm, back + 2.4 * perMm]
  if (gaps.length === 0) return boxPath(from, high, to, low)
  const [left, right] = [back + Math.min(...gaps) * perMm, back + Math.max(...gaps) * perMm]
  return (
    (left > from ? boxPath(from, high, left, low) : '') + (right < to ? boxPath(right, high, to, low) : '')
  )
}

/** The sweep in section behind the front leg, as far as its flank has come there. */
const sweepCut = (view: PinsView): string => {
  const { layout } = view
  const { front } = legsX(view)
  const { edge, belt } = sweepLevels(view)
  const near = front + wire * layout.perMm
  const isClear = view.sweep.isClear || view.focus.height <= edge
  const from = isClear ? layout.profile! + wire * layout.perMm : near
  const to = (layout.profile ?? 0) + (wire + 1.05) * layout.perMm
  const [top, low] = [levelY(layout, belt), levelY(layout, edge)]
  return outline([
    [from, top],
    [to, top],
    [to, low],
    [from, low],
  ])
}

/** The pin that the sweep is nearest to, from the side: its back leg under the card, its front leg in the sweep's way. */
export const drawProfile = (root: Group, view: PinsView): void => {
  const { layout, focus, prefix } = view
  if (layout.profile === null) return
  const { back } = legsX(view)
  const foot = levelY(layout, focus.height - view.frame.condition.dimensions.pinHigh - bottom)
  const pin = wireShape(view)
  drawShape(root, 'path', 'lift-spring', { d: liftSpring(layout, back - 0.9 * layout.perMm, foot) })
  drawShape(root, 'path', 'sweep-cut', {
    d: sweepCut(view),
    fill: hatch(prefix, 'cut'),
    'data-part': 'sweep',
  })
  drawShape(root, 'path', 'amber', { d: focus.lean === 0 ? '' : pin })
  drawShape(root, 'path', 'feeler', {
    d: pin,
    'data-look': pinLook(focus),
    fill: focus.pinBroken ? hatch(prefix, 'broken') : '',
    'data-part': `pin.${focus.column}`,
  })
  drawShape(root, 'path', 'card-cut', { d: cardCut(view), fill: hatch(prefix, 'cut'), 'data-part': 'card' })
}
