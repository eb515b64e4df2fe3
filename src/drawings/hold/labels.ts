import { needleName, stripOfNeedle } from '../../mechanism/bed.ts'
import { presserAsMade, presserOf } from '../../mechanism/condition.ts'
import { cams } from '../../mechanism/dimensions.ts'
import { buttReturnOf, heldHeight } from '../../mechanism/gate.ts'
import { markOfNeedle, measureOfNeedle } from '../../mechanism/indices.ts'
import { down } from '../../words/figures/hold.ts'
import { millimetres, withUnit } from '../../words/lists.ts'
import type { Balloon } from '../shared/balloons.ts'
import { catchOf, isPushed } from '../shared/detail/needle-state.ts'
import { shape } from '../shared/detail/profile.ts'
import type { Label } from '../shared/labels.ts'
import {
  catchX,
  dipX,
  isWorn,
  type Levels,
  levelsOf,
  presserDepth,
  reachY,
  shiftY,
  tips,
} from './dimensions.ts'
import { bedX, levelY, lift } from './layout.ts'
import type { HoldView } from './view.ts'

/** How far the strip has shifted, in words and in the colour of its meaning. */
const shiftWords = (view: HoldView): { look: string; text: string } => {
  const { shift, reach } = catchOf(view.frame, view.needle)
  const isBroken = view.broken.has(`strip.${stripOfNeedle(view.needle, view.frame.condition)}`)
  return {
    look: isBroken ? 'wrong' : shift >= reach ? 'selected' : '',
    text: shift > 0 ? `shift ${millimetres(shift)}` : 'no shift',
  }
}

const lowest = ({ held, dip }: Levels): number => Math.max(held, dip)

/** How far the presser dips, or that it does not. */
const dipWords = (view: HoldView): string =>
  view.frame.condition.carriagePlain ? 'no dip' : `dip ${millimetres(presserDepth(view))}`

const wideLabels = (view: HoldView): Label[] => {
  const { frame, layout, needle } = view
  const { condition, pass } = frame
  const levels = levelsOf(view)
  const { still, now } = tips(view)
  const { reach } = condition
  const moved = shiftWords(view)
  const height = measureOfNeedle(frame.buttHeights, needle)
  const gone = markOfNeedle(condition.needleGone, needle) === 1
  const name = needleName(needle)
  const y = levelY(layout, height)
  const outside = (from: number, to: number): number =>
    Math.min(from, to) - (Math.abs(to - from) < 20 ? 16 : 6)
  const worn = isWorn(view)
  const springWords = `time constant ${withUnit(Math.round(buttReturnOf(condition, needle, pass.pass)), 'ms')}`
  return [
    {
      look: 'end',
      x: outside(still, still + reach * layout.along),
      y: reachY + 4,
      text: `reach ${millimetres(reach)}`,
    },
    { look: `end ${moved.look}`, x: outside(still, now), y: shiftY + 4, text: moved.text },
    { look: '', x: catchX + 8, y: levels.rest - 6, text: 'rest line' },
    { look: '', x: catchX + 8, y: (levels.rest + levels.held) / 2 - 3, text: 'held' },
    {
      look: '',
      x: catchX + 8,
      y: (levels.rest + levels.held) / 2 + 12,
      text: down(heldHeight(condition, needle)),
    },
    {
      look: 'end',
      x: dipX - 6,
      y: lowest(levels) - (levels.dip > levels.held + 25 ? 12 : -16),
      text: dipWords(view),
    },
    {
      look: worn ? 'wrong' : 'hidden',
      x: catchX + 8,
      y: levels.nominal + 16,
      text: worn
        ? `worn ${millimetres(presserAsMade(condition, pass.way) - presserOf(condition, pass.way))}`
        : '',
    },
    { look: 'end strong', x: layout.left - 16, y: y - 2, text: name },
    {
      look: `end${gone ? ' wrong' : ''}`,
      x: layout.left - 16,
      y: y + 13,
      text: gone ? 'no butt' : down(height),
    },
    {
      look: 'over',
      x: bedX(layout, view.viewed, needle) + 20,
      y: levelY(layout, layout.floor) - 18,
      text: springWords,
    },
    { look: '', x: layout.right + 12, y: levelY(layout, shape.bed) + 17, text: 'channel in the bed' },
    { look: '', x: layout.right + 12, y: levelY(layout, shape.channel) + 24, text: 'needle bed' },
    { look: 'end', x: layout.left - 30, y: layout.names, text: 'needles' },
    { look: '', x: 8, y: 18, text: 'heights drawn' },
    { look: '', x: 8, y: 34, text: `${lift} times as large` },
  ]
}

/** Where the presser's name is, over its ramp but inside the section; null where the presser is out of sight. */
const presserX = ({ layout, viewed, frame }: HoldView): number | null => {
  const { way } = frame.pass
  const x = (ahead: number): number => bedX(layout, viewed, frame.x + way * ahead)
  const ends = [x(0), x(cams.presserFlat + cams.presserRamp)]
  if (Math.max(...ends) < layout.left || Math.min(...ends) > layout.right) return null
  const over = x(cams.presserFlat + cams.presserRamp * 0.8)
  return Math.min(layout.right - 100, Math.max(layout.left + 100, over))
}

/** The middle of the presser's flat, as far as a name can stand there. */
const flatX = ({ layout, viewed, frame }: HoldView): number => {
  const x = bedX(layout, viewed, frame.x + (frame.pass.way * cams.presserFlat) / 2)
  return Math.min(layout.right - 24, Math.max(layout.left + 24, x))
}

const narrowLabels = (view: HoldView): Label[] => {
  const { frame, layout, needle } = view
  const { condition } = frame
  const moved = shiftWords(view)
  const levels = levelsOf(view)
  const gate = gateX(view, 26)
  return [
    { look: '', x: layout.right + 12, y: levels.rest + 16, text: 'held' },
    {
      look: '',
      x: layout.right + 12,
      y: levels.rest + 31,
      text: millimetres(-heldHeight(condition, needle)),
    },
    {
      look: 'end',
      x: layout.width - 2,
      y: lowest(levels) + 16,
      text: dipWords(view),
    },
    {
      look: moved.look,
      x: layout.left,
      y: layout.names + 18,
      text: `${moved.text}, reach ${millimetres(condition.reach)}`,
    },
    { look: 'end', x: layout.width - 2, y: layout.names + 18, text: `heights × ${lift}` },
    {
      look: 'middle',
      x: flatX(view),
      y: levels.dip - 10,
      text: levels.dip - levels.held > 20 ? 'presser' : '',
    },
    { look: 'middle over', x: gate ?? 0, y: layout.presserTop + 14, text: gate === null ? '' : 'gate' },
  ]
}

/** Where the first gate's name is, over what is seen of it; null where too little is. */
const gateX = ({ layout, viewed, frame }: HoldView, room: number): number | null => {
  const { way } = frame.pass
  const x = (behind: number): number =>
    Math.min(layout.right, Math.max(layout.left, bedX(layout, viewed, frame.x - way * behind)))
  const [near, far] = [
    x(frame.condition.dimensions.gateLag),
    x(frame.condition.dimensions.gateLag + cams.gate1Length),
  ]
  return Math.abs(far - near) < room ? null : (near + far) / 2
}

/** The cams' names, the presser's with an arrow where it goes. */
const camLabels = (view: HoldView): Label[] => {
  const isRight = view.frame.pass.way === 1
  const isAside = view.frame.condition.carriagePlain
  const [x, gate] = [presserX(view), gateX(view, 96)]
  const [look, aside, text] = isRight
    ? (['strong', 15, 'presser →'] as const)
    : (['end strong', -15, '← presser'] as const)
  return [
    ...(x === null ? [] : [{ look, x: x + aside, y: 43, text: isAside ? 'presser, aside' : text }]),
    ...(gate === null
      ? []
      : [{ look: 'middle strong', x: gate + 12, y: 43, text: isAside ? 'gate, aside' : 'first gate' }]),
  ]
}

/** The needle's spur and its catch by name. */
const spurLabel = ({ frame, layout, viewed, needle }: HoldView): Label => {
  const height = measureOfNeedle(frame.buttHeights, needle) - shape.spurDrop - shape.spurThick / 2
  const isThere = markOfNeedle(frame.condition.needleGone, needle) === 0
  return {
    look: 'over',
    x: bedX(layout, viewed, needle) + 28,
    y: levelY(layout, height) + 4.5,
    text: isThere ? 'spur' : '',
  }
}

/** Every label of the section. */
export const sectionLabels = (view: HoldView): Label[] => {
  const { layout, viewed, seen, needle, frame } = view
  const { first, last } = frame.condition.bed
  const strip = stripOfNeedle(needle, frame.condition)
  const isWide = layout.shape === 'wide'
  const broken = view.broken.has(`strip.${strip}`)
  const names = seen
    .map((index) => ({ index, x: bedX(layout, viewed, index) }))
    .filter(
      ({ index, x }) => x > layout.left + 18 && x < layout.right - 18 && index >= first && index <= last,
    )
    .map(({ index, x }) => ({
      look: `middle${index === needle ? ' strong' : ''}`,
      x,
      y: layout.names,
      text: needleName(index),
    }))
  const middle = (shape.stripTop + shape.stripFoot) / 2
  return [
    ...names,
    {
      look: `on-strip${broken ? ' wrong' : isPushed(frame, strip) ? ' pushed' : ''}`,
      x: layout.left + (isWide ? 14 : 6),
      y: levelY(layout, middle) + 4.5,
      text: `strip ${strip}`,
    },
    ...(isWide ? [...wideLabels(view), spurLabel(view), ...camLabels(view)] : narrowLabels(view)),
  ]
}

/** The balloons: strip, needles, presser, first gate. */
export const balloonsOf = (view: HoldView): Balloon[] => {
  const { layout } = view
  if (layout.shape === 'narrow') return []
  const [presser, gate] = [presserX(view), gateX(view, 96)]
  const bar = levelY(layout, (shape.stripTop + shape.stripFoot) / 2)
  return [
    { number: 5, x: layout.left - 22, y: bar, to: [layout.left + 6, bar] },
    { number: 9, x: layout.left - 16, y: layout.names - 4.5 },
    ...(presser === null
      ? []
      : [{ number: 6, x: presser, y: 36, to: [presser, layout.presserTop + 7] as const }]),
    ...(gate === null
      ? []
      : [{ number: 7, x: gate - 34, y: 38.5, to: [gate - 34, layout.presserTop + 7] as const }]),
  ]
}
