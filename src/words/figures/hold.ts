import { needleName, stripOfNeedle } from '../../mechanism/bed.ts'
import { presserAsMade, presserOf } from '../../mechanism/condition.ts'
import { type Frame, sinceLetGo, isKept } from '../../mechanism/frame.ts'
import { freeHeight, heightAtGate, heldHeight, gatesOf, sortByHeight } from '../../mechanism/gate.ts'
import { dipsEnough } from '../../mechanism/hold.ts'
import {
  type Needle,
  measureOfNeedle,
  measureOfStrip,
  toNeedle,
  markOfNeedle,
} from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import { millimetres } from '../lists.ts'
import { capital } from '../parts.ts'
import { causeOf } from '../departures.ts'

/** The needle shown: the one under the presser, or the nearest in use where the carriage is beyond them. */
export const needleHeldUp = (frame: Frame): Needle => {
  const { first, last } = frame.condition.bed
  return toNeedle(Math.min(last, Math.max(first, Math.round(frame.x))))
}

/** The three moments of a hold: dipped; not taken, or let go too early; taken, and held until the first gate. */
export const moments = ['dipped', 'free', 'caught'] as const
export type Moment = (typeof moments)[number]

/** The moment at which the needle of this index is; null before the presser is at the bottom of its dip, and past the first gate. */
export const momentOf = (frame: Frame, index: Needle): Moment | null => {
  const since = sinceLetGo(frame.x, index, frame.pass.way)
  if (since < -1 || since > frame.condition.dimensions.gateLag) return null
  if (since <= 0) return 'dipped'
  return isKept(frame.pass, index, since) ? 'caught' : 'free'
}

/** Whether the catch of a needle takes its butt in this pass, but lets it go before the first gate. */
const isLetGoEarly = ({ condition, pass }: Frame, index: Needle): boolean => {
  const keptFor = measureOfNeedle(pass.keptFor, index)
  return keptFor > 0 && keptFor < condition.dimensions.gateLag
}

/** Height in mm of the needle's butt at each moment; a free one, or one let go too early, as it comes to the first gate. */
export const heightAt = (frame: Frame, index: Needle, moment: Moment): number => {
  const { condition, pass } = frame
  if (moment === 'caught') return heldHeight(condition, index)
  if (moment === 'dipped') return freeHeight(condition, index, pass.way, 0, 1)
  const keptFor = isLetGoEarly(frame, index) ? measureOfNeedle(pass.keptFor, index) : 0
  return heightAtGate(condition, index, pass.way, pass.pass, keptFor)
}

/** Why the needle can't be taken whatever its strip does, in two or three words; null where it can. */
export const neverCaught = (frame: Frame, index: Needle): string | null => {
  const { condition, pass } = frame
  if (condition.carriagePlain) return 'no presser'
  if (markOfNeedle(condition.needleGone, index)) return 'no butt'
  if (markOfNeedle(condition.catchBroken, index)) return 'catch broken'
  if (markOfNeedle(condition.needleBent, index)) return 'butt bent away'
  return dipsEnough(condition, index, pass.way) ? null : 'dip too small'
}

/** How far down a height is, in words. */
export const down = (height: number): string =>
  Math.abs(height) < 0.005
    ? 'at the rest line'
    : `${millimetres(Math.abs(height))} ${height < 0 ? 'down' : 'up'}`

/** What the gates will do with a butt at this height. */
const fate = (frame: Frame, height: number): string => {
  const outcome = sortByHeight(height, gatesOf(frame.condition))
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
  if (moment === 'dipped') {
    if (never === 'no butt') return ['under the presser', never, 'nothing to dip']
    return never === 'no presser'
      ? ['not dipped', 'presser stands aside', 'knits plain']
      : ['dipped', down(height), 'by the presser']
  }
  if (moment === 'caught')
    return never === null
      ? ['held to the gate', down(height), fate(frame, height)]
      : ['held to the gate', `no: ${never}`, '']
  if (never === 'no butt') return ['let go', never, 'no gate can move it']
  if (never === 'no presser') return ['at rest', down(height), 'no gate moves it']
  const first = isLetGoEarly(frame, index) ? 'let go too early' : 'not taken'
  return [first, down(height), fate(frame, height)]
}

const catchSentence = (frame: Frame, index: Needle): string => {
  const { condition } = frame
  const strip = stripOfNeedle(index, condition)
  const shift = measureOfStrip(frame.stripShifts, strip)
  const lead = `Strip ${strip} ${shift > 0 ? `has shifted ${millimetres(shift)}` : 'has not shifted'}`
  if (markOfNeedle(condition.catchBroken, index))
    return `${lead}, but the catch of this needle is broken off.`
  if (markOfNeedle(condition.needleGone, index))
    return `${lead}. The needle has no butt that a catch could hold.`
  if (markOfNeedle(condition.needleBent, index))
    return `${lead}, but the butt is bent, and its spur is out of the catch’s reach.`
  const reach = millimetres(condition.reach)
  return shift >= condition.reach
    ? `${lead}: enough, as its catch comes over the spur beside the butt from ${reach} on.`
    : `${lead}; its catch comes over the spur beside the butt only from ${reach} on.`
}

const buttSentence = (frame: Frame, index: Needle): string => {
  const { condition, pass } = frame
  const height = measureOfNeedle(frame.buttHeights, index)
  if (markOfNeedle(condition.needleGone, index)) return 'The presser finds nothing to dip.'
  if (condition.carriagePlain)
    return 'The carriage is not set to pattern: presser and gates stand aside, and the butt is not dipped.'
  const moment = momentOf(frame, index)
  if (moment === null) return 'The presser is not at it now.'
  if (moment === 'dipped') {
    const worn = presserOf(condition, pass.way) < presserAsMade(condition, pass.way) - 1e-9
    const short = dipsEnough(condition, index, pass.way)
      ? ''
      : `, less than the ${millimetres(condition.dimensions.catchDepth)} that a catch needs`
    return `The ${worn ? 'worn ' : ''}presser dips the butt: it is ${down(height)}${short}.`
  }
  if (moment === 'caught')
    return isLetGoEarly(frame, index)
      ? `The presser has let go; the catch holds the butt, ${down(height)}, but not until the first gate.`
      : `The presser has let go; the catch holds the butt, ${down(height)}, until the first gate.`
  return isLetGoEarly(frame, index)
    ? `Its strip has gone back too early: the catch has let go, and the butt springs up; it is ${down(height)} now.`
    : `The presser has let go and no catch has taken it: the butt springs up; it is ${down(height)} now.`
}

/** Figure 6 in words. */
export const describeHold = (_: Run, frame: Frame): string => {
  const index = needleHeldUp(frame)
  const departure = frame.pass.departures.find(({ needle }) => needle === index)
  const isSettled = sinceLetGo(frame.x, index, frame.pass.way) > 0
  const isSaid = departure?.stage === 'hold'
  const cause = departure && isSettled && !isSaid ? ` ${capital(causeOf(departure))}.` : ''
  return `Needle ${needleName(index)} in its trick, seen along the needle, with the presser above it; its strip lies in the bed behind the butts, and the catch reaches up from it. ${buttSentence(frame, index)} ${catchSentence(frame, index)}${cause}`
}
