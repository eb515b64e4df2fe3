import { at as entryAt, lastOf } from '../../mechanism/lookup.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Line } from '../shared/linework.ts'
import { dimensionLine, px, ring } from '../shared/paths.ts'
import { stripEnds } from './bar.ts'
import { alongOf, bedX, lift, stripTop } from './layout.ts'
import { ringsOf } from './panels.ts'
import type { StripView } from './view.ts'

/** The bracket under all the catches but the one at the carriage. */
const bracket = (view: StripView): string => {
  const { layout, needles } = view
  const [first, last] = [bedX(layout, entryAt(needles, 0)) - 10, bedX(layout, lastOf(needles)) + 6]
  const x = bedX(layout, view.frame.x)
  const half = layout.pitch * 4
  const y = layout.bracket
  const piece = (from: number, to: number): string =>
    to - from > 8 ? `M${px(from)},${y - 4}V${y}H${px(to)}V${y - 4}` : ''
  if (view.under === null) return piece(first, last)
  return piece(first, Math.min(last, x - half)) + piece(Math.max(first, x + half), last)
}

/** Dimensions of the shift at the stop and of the preload at the spring, rings round the details, and the bracket. */
export const dimensionLines = (view: StripView): Line[] => {
  const { layout, shift } = view
  const along = alongOf(layout)
  const { left } = stripEnds(view)
  const top = stripTop(layout)
  const y = top - 10
  const extension = (x: number, to: number): string => `M${px(x)},${px(y - 5)}V${px(to)}`
  const free = layout.right - view.frame.condition.dimensions.preload * along
  const middle = layout.rest + 1.3 * along * lift
  const isWide = layout.shape === 'wide'
  // The two details may be of neighbours on the strip: their rings do not meet.
  const radius = Math.min(2.9 * along, (dimensions.strips * layout.pitch) / 2 - 1.5)
  const rings = ringsOf(view)
    .map(({ index }) => ring(bedX(layout, index) - 1.1 * along, middle, px(radius)))
    .join('')
  return [
    { look: 'ring', d: rings },
    { look: 'bracket', d: bracket(view) },
    ...(isWide
      ? [
          {
            look: 'extension',
            d: shift > 0.01 ? extension(layout.left, top) + extension(left, top) : '',
          },
          { look: 'dimension', d: shift > 0.01 ? dimensionLine(layout.left, y, left, y) : '' },
          {
            look: 'extension',
            d: extension(free, layout.foot + 6) + extension(layout.right, top),
          },
          { look: 'dimension', d: dimensionLine(free, y, layout.right, y) },
        ]
      : []),
  ]
}
