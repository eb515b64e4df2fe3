import { columnsOfStrip, needleName, stripOfNeedle } from '../../../mechanism/bed.ts'
import { cams, sortedAfter, type Dimensions, gate2Start } from '../../../mechanism/dimensions.ts'
import { type Frame, sinceLetGo, isKept } from '../../../mechanism/frame.ts'
import { heldHeight } from '../../../mechanism/gate.ts'
import {
  type Needle,
  ofColumn,
  measureOfStrip,
  type Strip,
  markOfNeedle,
  ofNeedle,
  measureOfNeedle,
} from '../../../mechanism/indices.ts'
import { stripShift } from '../../../mechanism/strip.ts'
import { type Catch, shape } from './profile.ts'

/** Travel in needles after which the second gate has drawn a held needle out of its catch, lengthwise. */
const drawnOut = (dimensions: Dimensions): number => gate2Start(dimensions) + cams.gate2Length / 4

/** How far a nose that holds a spur lies over it at least, in mm, while its strip goes back. */
const bite = 0.3

/** The state of a needle between presser and gates. */
export type Holding = 'waiting' | 'held' | 'extra' | 'free' | 'missed' | 'sorted'

/** What needle `index` is on its way to, from the presser's release on; sorted once it is set out. */
export const holdingOf = (frame: Frame, index: Needle): Holding => {
  const { pass, x } = frame
  const since = sinceLetGo(x, index, pass.way)
  const kept = isKept(pass, index, since)
  if (since < 0 || (since === 0 && !kept)) return 'waiting'
  const asked = ofNeedle(pass.asked, index) === 'selected'
  if (kept && asked) return since > sortedAfter(frame.condition.dimensions) + 1 ? 'sorted' : 'held'
  if (kept) return 'extra'
  return asked ? 'missed' : 'free'
}

/** How far the tip of a catch can go where the spur of a needle is in its way, in mm of shift; `under` is its nose's. */
const roomFor = (reach: number, under: number, height: number): number => {
  const spurTop = height - shape.spurDrop
  if (spurTop <= under + 1e-6) return Infinity
  const gap = spurTop - shape.spurThick - under - shape.tipThick
  return reach + Math.max(0, gap) / shape.slope
}

/**
 * The catch of needle `index` as it is in a frame. Its strip moves it. The spur that a catch holds is pressed against
 * its nose, so the tip stays behind when the strip goes back, until the catch lets go; past the first gate, which keeps
 * the butt down, nothing but the strip holds it there. Where a spur is in the way of the nose the finger gives.
 */
export const catchOf = (frame: Frame, index: Needle): Catch => {
  const { condition, pass, x } = frame
  const strip = stripOfNeedle(index, condition)
  const shift = measureOfStrip(frame.stripShifts, strip)
  const under = heldHeight(condition, index) - shape.spurDrop
  const { reach } = condition
  const whole = { reach, shift, under }
  if (markOfNeedle(condition.needleGone, index) || markOfNeedle(condition.catchBroken, index))
    return { ...whole, tip: shift }
  const since = sinceLetGo(x, index, pass.way)
  const { gateLag, letGo } = condition.dimensions
  const holds = since <= gateLag || (shift >= letGo && since <= drawnOut(condition.dimensions))
  if (since > 0 && holds && isKept(pass, index, since)) {
    const atLetGo = stripShift(condition, pass.drive, strip, index)
    return { ...whole, tip: Math.max(shift, Math.min(atLetGo, reach + bite)) }
  }
  const lean = markOfNeedle(condition.needleBent, index) ? shape.lean : 0
  return {
    ...whole,
    tip: Math.min(shift, roomFor(reach + lean, under, measureOfNeedle(frame.buttHeights, index))),
  }
}

/**
 * Whether the strip's shift now comes from a rocker that pushes: then the push is shown as it travels. A slow strip
 * that its rocker has left behind is pushed no longer.
 */
export const isPushed = (frame: Frame, strip: Strip): boolean => {
  const { condition, rockerOuts } = frame
  const shift = measureOfStrip(frame.stripShifts, strip)
  const push = Math.max(...columnsOfStrip(strip).map((column) => ofColumn(rockerOuts, column)))
  const isSlow = measureOfStrip(condition.stripReturn, strip) > condition.dimensions.stripReturn
  return shift > 0 && push > (isSlow ? shift - 0.05 : 0) && condition.stripStuck[strip - 1] !== 2
}

/** Id of a needle as a part. */
export const needlePart = (index: Needle): string => `needle.${needleName(index)}`
