import { needleName } from '../../mechanism/bed.ts'
import { at as entryAt, lastOf } from '../../mechanism/lookup.ts'
import { toNeedle, markOfNeedle, measureOfNeedle } from '../../mechanism/indices.ts'
import { carriageHalf, presserEdge } from '../shared/cams.ts'
import { catchOf, holdingOf, needlePart } from '../shared/detail/needle-state.ts'
import { buttOutline, catchOutline, shape, stumpOutline } from '../shared/detail/profile.ts'
import type { Line } from '../shared/linework.ts'
import { boxPath, outline, polyline, px } from '../shared/paths.ts'
import { alongOf, bedX, buttPosition, lift, stripTop } from './layout.ts'
import { stripMark, type StripView } from './view.ts'

/** Where the ends of the strip are now. */
export const stripEnds = ({ layout, shift }: StripView): { left: number; right: number } => ({
  left: layout.left + shift * alongOf(layout),
  right: layout.right + shift * alongOf(layout),
})

/** The strip, hatched where it is broken. */
export const bar = (view: StripView): Line => {
  const { left, right } = stripEnds(view)
  return {
    look: `long-bar${stripMark(view)}`,
    d: boxPath(left, stripTop(view.layout), right, view.layout.foot),
    part: `strip.${view.strip}`,
    ...(view.isBroken ? { hatch: 'broken' as const } : {}),
  }
}

/** The stop at one end, the wall at the other, and the return spring between wall and strip. */
export const endParts = (view: StripView): Line[] => {
  const { layout } = view
  const middle = (stripTop(layout) + layout.foot) / 2
  const reach = layout.block * 1.3
  const { right } = stripEnds(view)
  const turns = 7
  const step = (layout.wall - right) / (2 * turns)
  const coil: [number, number][] = [[right, middle]]
  for (let n = 0; n < 2 * turns; n++)
    coil.push([right + (n + 0.5) * step, middle + (n % 2 === 0 ? -reach * 0.8 : reach * 0.8)])
  coil.push([layout.wall, middle])
  return [
    {
      look: 'fixed',
      d: boxPath(layout.left - layout.block, middle - reach * 1.4, layout.left, middle + reach * 1.4),
      hatch: 'cut',
    },
    {
      look: 'fixed',
      d: boxPath(layout.wall, middle - reach * 1.4, layout.wall + layout.block, middle + reach * 1.4),
      hatch: 'cut',
    },
    { look: 'coil', d: polyline(coil) },
  ]
}

/** Where a strip that should have gone back to its stop has stayed. */
export const leftBehind = (view: StripView, left: number): Line => ({
  look: 'left-behind',
  d: left > 0 ? boxPath(view.layout.left, stripTop(view.layout), stripEnds(view).left, view.layout.foot) : '',
  ...(left > 0 ? { hatch: 'broken' as const } : {}),
})

/** The bed, cut open down to the channel in which the strip lies, with a tick at each needle; and the rest line. */
export const bed = (view: StripView): Line[] => {
  const { layout, whole } = view
  const along = alongOf(layout)
  const top = layout.rest - shape.bed * along * lift
  const [left, right] = [bedX(layout, whole.first - 1) - 4 * along, bedX(layout, whole.last + 1)]
  const floor = layout.foot + 2
  return [
    { look: 'channel', d: boxPath(left, top, right, floor) },
    { look: 'ground-line', d: boxPath(left, floor, right, layout.bedFoot), hatch: 'cut' },
    {
      look: 'tricks',
      d: `M${px(bedX(layout, whole.first - 0.5))},${px(layout.bedFoot - 4)}H${px(bedX(layout, whole.last + 0.5))}`,
    },
    { look: 'rest', d: `M${px(left)},${layout.rest}H${px(right)}` },
  ]
}

/** The butts of the strip's needles; those out of use faint, one without a butt dashed. */
export const butts = (view: StripView): Line[] => {
  const { frame, layout, needles } = view
  const { condition } = frame
  const { first, last } = condition.bed
  return needles.map((index) => {
    const gone = markOfNeedle(condition.needleGone, index) === 1
    const lean = markOfNeedle(condition.needleBent, index) ? shape.lean : 0
    const isOut = index < first || index > last
    const holding = isOut ? 'out' : holdingOf(frame, index)
    const look = gone ? 'gone' : `small-butt ${holding}${lean > 0 ? ' bent' : ''}`
    return {
      look,
      d: buttOutline(buttPosition(layout, index), measureOfNeedle(frame.buttHeights, index), lean),
      part: needlePart(index),
    }
  })
}

/** All the catches of the strip: one shift moves them all. */
export const catches = (view: StripView): Line[] => {
  const { frame, layout, needles } = view
  return needles.map((index) => {
    const isBroken = markOfNeedle(frame.condition.catchBroken, index) === 1
    const state = catchOf(frame, index)
    const place = buttPosition(layout, index)
    return {
      look: `small-catch${isBroken ? ' broken' : stripMark(view)}`,
      d: isBroken ? stumpOutline(place, state) : catchOutline(place, state),
      part: isBroken ? `catch.${needleName(index)}` : `strip.${view.strip}`,
    }
  })
}

/** The push along the strip to the catch over the butt that is being let go; and the butts that are held. */
export const barGlows = (view: StripView): string => {
  const { frame, layout, needles, under, pushed } = view
  const held = needles.filter((index) => holdingOf(frame, index) === 'held')
  const moving = pushed
    ? bar(view).d +
      (under === null ? '' : catchOutline(buttPosition(layout, under), catchOf(frame, toNeedle(under))))
    : ''
  return (
    moving +
    held
      .map((index) => buttOutline(buttPosition(layout, index), measureOfNeedle(frame.buttHeights, index), 0))
      .join('')
  )
}

/** The carriage where it is on the bed, and in it the presser: it spans no more than one of the strip's butts. */
export const carriage = (view: StripView): Line[] => {
  const { frame, layout } = view
  const { way } = frame.pass
  const up = alongOf(layout) * lift
  const top = layout.rest - 0.7 * up
  const lower = presserEdge(frame.condition, way, 6).map(({ ahead, depth }): [number, number] => [
    bedX(layout, frame.x + way * ahead),
    layout.rest + depth * up,
  ])
  const edge: [number, number][] = [[entryAt(lower, 0)[0], top], ...lower, [lastOf(lower)[0], top]]
  return [
    {
      look: 'carriage-body',
      d: boxPath(
        bedX(layout, frame.x - carriageHalf),
        layout.cover,
        bedX(layout, frame.x + carriageHalf),
        layout.bedFoot + 4,
      ),
      part: 'carriage',
    },
    { look: 'small-presser', d: outline(edge), part: 'presser' },
  ]
}
