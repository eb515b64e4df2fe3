import { select } from 'd3'
import { dimensions } from '../../mechanism/dimensions.ts'
import { ring } from '../shared/drafting.ts'
import { change, type Group, keep, part, parts, polyline, px } from '../shared/svg.ts'
import { slots } from './columns.ts'
import { columnPitch, planY, rightOf } from './layout.ts'
import { lens, neckHalf } from './shapes.ts'
import type { Column, View } from './view.ts'

const middle = (dimensions.pinHigh + dimensions.pinLow) / 2

/** A hole as it is drawn: as punched, torn where none should be, or blocked. */
const holeLook = ({ isHole, isWrong }: Column): string =>
  isHole ? (isWrong ? 'torn' : 'hole') : isWrong ? 'blocked' : ''

const pinLook = (column: Column): string => {
  if (column.pinBroken) return 'broken'
  if (column.lean !== 0) return 'pushed'
  return column.height > middle ? 'high' : 'low'
}

/** A column from above: the hole in the card where it really lies, and the pin's head under it or through it. */
const drawColumn = (group: Group, view: View, column: Column): void => {
  const { perMm } = view.layout
  const [R, r] = [(dimensions.hole / 2) * perMm, (dimensions.pin / 2) * perMm]
  const hole: [number, number] = [column.side * perMm, column.along * perMm]
  const look = holeLook(column)
  const isThrough = column.height > middle
  const isStopped = column.isHole && !column.fits
  const opening = part(group, 'path', 'opening')
  change(opening, 'd', () => (look === '' ? '' : ring(hole[0], hole[1], R)))
  change(opening, 'data-look', () => look)
  change(opening, 'fill', () => (look === 'blocked' ? `url(#${view.prefix}-broken)` : ''))
  const isOff = Math.hypot(...hole) > 0.5
  change(part(group, 'path', 'hole-middle'), 'd', () =>
    look !== '' && isOff ? `M${px(hole[0] - 5)},${px(hole[1])}h10m-5,-5v10` : '',
  )
  const hidden = part(group, 'path', 'hidden-pin')
  change(hidden, 'd', () => (column.hasCard && !isThrough ? ring(0, 0, r) : ''))
  change(hidden, 'data-look', () => (isStopped ? 'stopped' : ''))
  change(hidden, 'fill', () => (isStopped ? `url(#${view.prefix}-broken)` : 'none'))
  const neck = part(group, 'path', 'seen-neck')
  change(neck, 'd', () => {
    const wide = neckHalf * perMm
    return column.lean === 0 ? '' : `M0,${px(-wide)}H${px(column.lean * perMm)}v${px(2 * wide)}H0Z`
  })
  const seen = part(group, 'path', 'seen-pin')
  change(seen, 'd', () => {
    if (isThrough) return ring(column.lean * perMm, 0, r)
    return column.hasCard && !column.isHole ? '' : lens([0, 0], r, hole, column.hasCard ? R : 4 * R)
  })
  change(seen, 'data-look', () => pinLook(column))
}

/** A freehand edge, where the drawing breaks the card off. */
const brokenEdge = (view: View, y: number): [number, number][] => {
  const { layout } = view
  const step = columnPitch(layout) / 24
  const from = layout.left - step
  const count = Math.ceil((rightOf(layout) - from) / step) + 1
  return Array.from({ length: count }, (_, n) => [
    from + n * step,
    y + 1.6 * Math.sin(n / 2.3) + Math.sin(n / 5.1),
  ])
}

/** The card from above with its holes, and the pins' heads. */
export const drawPlan = (root: Group, view: View): void => {
  const { layout, frame } = view
  const card = part(root, 'path', 'sheet')
  change(card, 'd', () => {
    if (frame.pass.row === null) return ''
    const bottom = brokenEdge(view, layout.planBottom).reverse()
    return `${polyline([...brokenEdge(view, layout.planTop), ...bottom])}Z`
  })
  keep(card, 'data-part', 'card')
  const groups = parts(part(root, 'g', 'plan-columns'), 'g', 'plan-column', slots(view))
  change(groups, 'display', (column) => (column ? 'inline' : 'none'))
  change(groups, 'transform', (column) => (column ? `translate(${px(column.x)} ${planY(layout)})` : ''))
  groups.each(function (column) {
    if (column) drawColumn(select<SVGGElement, null>(this), view, column)
    else this.replaceChildren()
  })
}

/** Middle lines of the row and of each column, through both views. */
export const drawMiddles = (root: Group, view: View): void => {
  const { layout, columns } = view
  const y = planY(layout)
  change(part(root, 'path', 'middle-line'), 'd', () =>
    [
      `M${layout.left},${y}H${px(rightOf(layout))}`,
      ...columns.map(({ x }) => `M${px(x)},${layout.planTop - 3}V${px(layout.datum + 3.4 * layout.perMm)}`),
    ].join(''),
  )
}
