import { needleName, stripOfNeedle } from '../../mechanism/bed.ts'
import { presserOf } from '../../mechanism/condition.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { type Frame, sinceLetGo, isKept } from '../../mechanism/frame.ts'
import { buttReturnOf, freeHeight, heldHeight, sortByHeight, travelTime } from '../../mechanism/gate.ts'
import { dipsEnough } from '../../mechanism/hold.ts'
import { type Needle, measureOfNeedle, measureOfStrip, toNeedle } from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import { millimetres } from '../lists.ts'
import { capital } from '../parts.ts'
import { causeOf } from '../departures.ts'

/** The needle shown: the one under the presser, or the nearest in use where the carriage is beyond them. */
export const needleHeldUp = (frame: Frame): Needle => {
  const { first, last } = frame.condition.bed
  return toNeedle(Math.min(last, Math.max(first, Math.round(frame.x))))
}

/** The three moments of a hold. */
export const moments = ['dipped', 'free', 'caught'] as const
export type Moment = (typeof moments)[number]

/** The moment at which the needle of this index is; null before the presser has reached the bottom of its dip. */
export const momentOf = (frame: Frame, index: Needle): Moment | null => {
  const since = sinceLetGo(frame.x, index, frame.pass.way)
  if (Math.abs(since) > 1) return null
  if (since <= 0) return 'dipped'
  return isKept(frame.pass, index, since) ? 'caught' : 'free'
}

/** Height in mm of the needle's butt at each moment; a free one as it comes to the first gate. */
export const heightAt = (frame: Frame, index: Needle, moment: Moment): number => {
  const { condition, pass } = frame
  if (moment === 'caught') return heldHeight(condition, index)
  const time = moment === 'dipped' ? 0 : travelTime(condition, dimensions.gateLag)
  return freeHeight(condition, index, pass.way, time, buttReturnOf(condition, index, pass.pass))
}

/** Why the needle can't be caught whatever its strip does, in two or three words; null where it can. */
export const neverCaught = (frame: Frame, index: Needle): string | null => {
  const { condition, pass } = frame
  if (condition.needleGone[index]) return 'no butt'
  if (condition.catchBroken[index]) return 'catch broken'
  if (condition.needleBent[index]) return 'butt bent away'
  return dipsEnough(condition, index, pass.way) ? null : 'dip too small'
}

/** How far down a height is, in words. */
export const down = (height: number): string =>
  Math.abs(height) < 0.005
    ? 'at the rest line'
    : `${millimetres(Math.abs(height))} ${height < 0 ? 'down' : 'up'}`

/** What the gates will do with a butt at this height. */
const fate = (frame: Frame, height: number): string => {
  const outcome = sortByHeight(height, frame.condition.gate1)
  if (outcome === 'plain') return 'the first gate stops it'
  return outcome === 'selected' ? 'passes under the first gate' : 'both gates miss it'
}

/** A moment in three short lines: what happens, how far down the butt is, and what follows. */
export const momentWords = (
  frame: Frame,
  index: Needle,
  moment: Moment,
): readonly [string, string, string] => {
  const height = heightAt(frame, index, moment)
  const never = neverCaught(frame, index)
  if (moment === 'dipped')
    return never === 'no butt'
      ? ['under the presser', never, 'nothing to dip']
      : ['dipped', down(height), 'by the presser']
  if (moment === 'caught')
    return never === null
      ? ['let go, caught', down(height), fate(frame, height)]
      : ['let go, caught', `no: ${never}`, '']
  return never === 'no butt'
    ? ['let go', never, 'no gate can move it']
    : ['let go, not caught', down(height), fate(frame, height)]
}

const catchSentence = (frame: Frame, index: Needle): string => {
  const { condition } = frame
  const strip = stripOfNeedle(index)
  const shift = measureOfStrip(frame.stripShifts, strip)
  const lead = `Strip ${strip} ${shift > 0 ? `has shifted ${millimetres(shift)}` : 'has not shifted'}`
  if (condition.catchBroken[index]) return `${lead}, but the catch of this needle is broken off.`
  if (condition.needleGone[index]) return `${lead}. The needle has no butt that a catch could hold.`
  if (condition.needleBent[index]) return `${lead}, but the butt is bent out of its catch’s reach.`
  const reach = millimetres(condition.reach)
  return shift >= condition.reach
    ? `${lead}: more than the ${reach} at which its catch covers the butt.`
    : `${lead}; its catch covers the butt only from ${reach} on.`
}

const buttSentence = (frame: Frame, index: Needle): string => {
  const { condition, pass } = frame
  const height = measureOfNeedle(frame.buttHeights, index)
  if (condition.needleGone[index]) return 'The presser finds nothing to dip.'
  const moment = momentOf(frame, index)
  if (moment === null) return 'The presser is not at it now.'
  if (moment === 'dipped') {
    const worn = presserOf(condition, pass.way) < dimensions.presser - 1e-9
    const short = dipsEnough(condition, index, pass.way)
      ? ''
      : `, less than the ${millimetres(dimensions.catchDepth)} that a catch needs`
    return `The ${worn ? 'worn ' : ''}presser dips the butt: it is ${down(height)}${short}.`
  }
  return moment === 'caught'
    ? `Let go, the butt is held by its catch, ${down(height)}.`
    : `Let go, the butt springs up; it is ${down(height)} now.`
}

/** Figure 6 in words. */
export const describeHold = (_: Run, frame: Frame): string => {
  const index = needleHeldUp(frame)
  const departure = frame.pass.departures.find(({ needle }) => needle === index)
  const isSettled = sinceLetGo(frame.x, index, frame.pass.way) > 0
  const isSaid = departure?.stage === 'hold'
  const cause = departure && isSettled && !isSaid ? ` ${capital(causeOf(departure))}.` : ''
  return `Needle ${needleName(index)} in its trick, seen along the needle, with the presser above it and the catch of its strip beside it. ${buttSentence(frame, index)} ${catchSentence(frame, index)}${cause}`
}
