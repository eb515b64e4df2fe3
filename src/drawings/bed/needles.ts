import { px, ring } from '../shared/paths.ts'
import { type BedLayout, travels } from './layout.ts'
import type { BedMark } from './marks.ts'

/** How far the needle of a mark is in front of the rest line, in pixels. */
const travelOf = (layout: BedLayout, mark: BedMark): number => {
  const { selected, plain, unmoved } = travels(layout)
  if (mark === 'unmoved') return unmoved
  return mark === 'selected' || mark === 'extra' ? selected : plain
}

/** A needle from above, its hook at the front, open to the right; a diamond or a cross takes the place of the hook. */
export const needlePath = (layout: BedLayout, mark: BedMark, x: number, y: number): string => {
  const { stem, bend } = layout
  const hook = y + travelOf(layout, mark)
  if (mark === 'extra' || mark === 'unmoved') return `M${px(x)},${px(hook - stem)}v${px(stem - layout.sign)}`
  return `M${px(x)},${px(hook - stem)}v${stem - bend}q${bend},${3 * bend} ${2 * bend},${-bend}`
}

/**
 * What marks a needle that is not as asked, whatever its colour: an open ring where a missed hook should be, a filled
 * diamond on a hook that was not asked for, a cross on one that did not move.
 */
export const signPath = (layout: BedLayout, mark: BedMark, x: number, y: number): string => {
  const { sign } = layout
  const { selected, unmoved } = travels(layout)
  if (mark === 'missed') return ring(x, y + selected - sign, sign)
  if (mark === 'extra') {
    const half = px(sign * 1.3)
    return `M${px(x)},${px(y + selected - 2 * half)}l${half},${half}l${-half},${half}l${-half},${-half}Z`
  }
  if (mark === 'unmoved') {
    const top = px(y + unmoved - 2 * sign)
    return `M${px(x - sign)},${top}l${2 * sign},${2 * sign}m0,${-2 * sign}l${-2 * sign},${2 * sign}`
  }
  return ''
}
