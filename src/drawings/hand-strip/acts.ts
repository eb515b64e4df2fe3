import { dimensions } from '../../mechanism/dimensions.ts'
import { stripFelt } from '../../mechanism/by-hand.ts'
import { heldHeight } from '../../mechanism/gate.ts'
import { at } from '../../mechanism/lookup.ts'
import { type Needle, markOfNeedle } from '../../mechanism/indices.ts'
import { type Act, acts, notKept } from '../../words/figures/hand-strip.ts'
import {
  buttOutline,
  type ButtPosition,
  catchOutline,
  shape,
  stumpOutline,
} from '../shared/detail/profile.ts'
import { fingerLines, handArrow } from '../shared/hand.ts'
import type { Line } from '../shared/linework.ts'
import { boxPath, polyline } from '../shared/paths.ts'
import type { HandStripView } from './view.ts'

/** How far to each side of the needle a picture shows the bed, in mm. */
const [leftMost, rightMost] = [-4.3, 1.7] as const

/** Height of the butt during an act, in mm. */
const heightIn = (view: HandStripView, needle: Needle, act: Act): number => {
  const { condition } = view.frame
  const isKept = notKept(condition, view.strip, needle) === null
  const staysOver = stripFelt(condition, view.strip).backIn === Infinity
  if (act === 'press') return -dimensions.presserRight
  return isKept && (act === 'letGo' || staysOver) ? heldHeight(condition, needle) : 0
}

/** How far the strip is over during an act, in mm. */
const shiftIn = (view: HandStripView, act: Act): number => {
  const { pushed, after } = stripFelt(view.frame.condition, view.strip)
  return act === 'back' ? after : pushed
}

const actLines = (view: HandStripView, needle: Needle, act: Act, left: number): Line[] => {
  const { layout, strip } = view
  const { condition } = view.frame
  const { acts: pictures } = layout
  const place: ButtPosition = {
    x: left + pictures.needle,
    rest: pictures.top + pictures.rest,
    along: pictures.along,
    up: pictures.up,
  }
  const x = (mm: number): number => place.x + mm * place.along
  const y = (mm: number): number => place.rest - mm * place.up
  const across = (low: number, high: number): string => boxPath(x(leftMost), y(high), x(rightMost), y(low))
  const shift = shiftIn(view, act)
  const height = heightIn(view, needle, act)
  const under = heldHeight(condition, needle) - shape.spurDrop
  // A nose that comes against the stem of a butt at rest passes beneath its spur.
  const catching = { reach: condition.reach, shift, tip: shift, under }
  const isStump = markOfNeedle(condition.catchBroken, needle) === 1
  const isBroken = view.broken.has(`strip.${strip}`)
  const isGone = markOfNeedle(condition.needleGone, needle) === 1
  const lean = markOfNeedle(condition.needleBent, needle) === 1 ? shape.lean : 0
  const arrow = layout.finger * 0.6
  const held = act !== 'back' && shift > 0
  const bar = y((shape.stripTop + shape.stripFoot) / 2)
  return [
    {
      look: 'still-frame',
      d: `M${left},${pictures.top}h${pictures.width}v${pictures.height}h${-pictures.width}Z`,
    },
    { look: 'hand-body', d: across(shape.channel, shape.bed) },
    { look: 'hand-wall', d: across(shape.channel - 1.15, shape.channel), hatch: 'cut' },
    {
      look: `hand-part${isBroken ? ' broken' : ''}`,
      d: across(shape.stripFoot, shape.stripTop),
      part: `strip.${strip}`,
      ...(isBroken ? { hatch: 'broken' as const } : {}),
    },
    {
      look: `hand-part${isStump ? ' broken' : ''}`,
      d: isStump ? stumpOutline(place, catching) : catchOutline(place, catching),
      part: `strip.${strip}`,
    },
    {
      look: 'rest',
      d: polyline([
        [x(leftMost), place.rest],
        [x(rightMost), place.rest],
      ]),
    },
    {
      look: `hand-part felt${lean > 0 ? ' broken' : ''}`,
      d: isGone ? '' : buttOutline(place, height, lean),
    },
    ...(held ? [handArrow([x(leftMost) - 4, bar], [x(leftMost) + 1.5 * place.along, bar], arrow)] : []),
    ...(act === 'press' && !isGone
      ? fingerLines({ tip: [x(lean), y(height) - 1], points: 90, half: layout.finger * 0.85 })
      : []),
  ]
}

/** The three acts side by side: the butt pressed down, the finger off it, and the strip let go. */
export const actsLines = (view: HandStripView): Line[] => {
  const { needle, layout } = view
  return needle === null
    ? []
    : acts.flatMap((act, n) => actLines(view, needle, act, at(layout.acts.lefts, n)))
}
