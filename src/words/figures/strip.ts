import { columnsOfStrip, needleName, needlesOfStrip, stripOfNeedle } from '../../mechanism/bed.ts'
import { partOfFault } from '../../mechanism/fault.ts'
import { type Frame, needleUnderPresser, sinceLetGo, isKept } from '../../mechanism/frame.ts'
import { presserDip } from '../../mechanism/hold.ts'
import {
  allStrips,
  type Needle,
  measureOfColumn,
  measureOfStrip,
  type Strip,
  toNeedle,
  markOfNeedle,
  ofNeedle,
} from '../../mechanism/indices.ts'
import { at } from '../../mechanism/lookup.ts'
import { neverCaught } from './hold.ts'
import type { Run } from '../../mechanism/pass.ts'
import { sortedAfter } from '../../mechanism/dimensions.ts'
import { listed, millimetres } from '../lists.ts'

/** The strip shown, 1 to 8: a broken one, else that of the needle under the presser, else the one shifted furthest. */
export const stripShown = (run: Run, frame: Frame): Strip => {
  const broken = allStrips.filter((strip) =>
    run.scenario.faults.some((fault) => partOfFault(fault) === `strip.${strip}`),
  )
  const needle = needleUnderPresser(frame.condition, frame.x)
  const under = needle === null ? null : stripOfNeedle(needle, frame.condition)
  if (under !== null && (broken.length === 0 || broken.includes(under))) return under
  if (broken[0] !== undefined) return broken[0]
  const { first, last } = frame.condition.bed
  const shifts = allStrips.map((strip) => measureOfStrip(frame.stripShifts, strip))
  const most = Math.max(...shifts)
  return most > 0
    ? at(allStrips, shifts.indexOf(most))
    : stripOfNeedle(toNeedle(Math.min(last, Math.max(first, Math.round(frame.x)))), frame.condition)
}

/** The needle of a strip that is under the presser; null where none of its needles is. */
export const underPresser = (frame: Frame, strip: Strip): Needle | null => {
  const needle = needleUnderPresser(frame.condition, frame.x)
  return needle !== null && stripOfNeedle(needle, frame.condition) === strip ? needle : null
}

const nearest = (frame: Frame, indexes: readonly Needle[]): Needle | null =>
  indexes.reduce<Needle | null>(
    (best, index) => (best === null || Math.abs(index - frame.x) < Math.abs(best - frame.x) ? index : best),
    null,
  )

/** The two needles drawn large: the one under the presser or next to come, and one of the others; null where none is. */
export const needlesLarge = (frame: Frame, strip: Strip): { one: Needle | null; other: Needle | null } => {
  const { first, last } = frame.condition.bed
  const inUse = needlesOfStrip(strip, frame.condition, frame.condition.dimensions.needles).filter(
    (index) => index >= first && index <= last,
  )
  const since = (index: Needle): number => sinceLetGo(frame.x, index, frame.pass.way)
  const one =
    nearest(
      frame,
      inUse.filter((index) => since(index) <= 0.5),
    ) ?? nearest(frame, inUse)
  const clear = inUse.filter(
    (index) =>
      index !== one && (since(index) < -4 || since(index) > sortedAfter(frame.condition.dimensions) + 1),
  )
  const ahead = clear.filter((index) => since(index) < 0)
  return { one, other: nearest(frame, ahead) ?? nearest(frame, clear) }
}

/** What is wrong with a strip, in a word or two; empty where nothing is. */
export const stripFault = (run: Run, strip: Strip): string => {
  const fault = run.scenario.faults.find((one) => partOfFault(one) === `strip.${strip}`)
  if (!fault) return ''
  if (fault.kind === 'strip.seized') return 'seized'
  return fault.kind === 'strip.over' ? 'stuck shifted' : 'slow'
}

/** The largest output of a strip's three rockers now, in mm. */
const pushOn = (frame: Frame, strip: Strip): number =>
  Math.max(...columnsOfStrip(strip).map((column) => measureOfColumn(frame.rockerOuts, column)))

/** The shift in mm that no rocker holds now: what is left over of an earlier push. */
export const leftOver = (frame: Frame, strip: Strip): number => {
  const shift = measureOfStrip(frame.stripShifts, strip)
  return shift > pushOn(frame, strip) + 0.05 ? shift : 0
}

const oneState = (frame: Frame, index: Needle): readonly string[] => {
  const { condition, pass } = frame
  const strip = stripOfNeedle(index, condition)
  const shift = measureOfStrip(frame.stripShifts, strip)
  const since = sinceLetGo(frame.x, index, pass.way)
  if (markOfNeedle(condition.needleGone, index)) return ['it has no butt', 'nothing to catch']
  if (since <= 0) {
    const never = neverCaught(frame, index)
    if (condition.carriagePlain) return ['presser stands aside', 'nothing is dipped']
    const covers = shift >= condition.reach
    return [
      `dipped ${millimetres(presserDip(condition, pass.way))}`,
      never ??
        (covers
          ? 'its catch is over its spur'
          : shift > 0
            ? 'its catch is short of it'
            : 'its catch stays back'),
    ]
  }
  if (!isKept(pass, index, 0)) return ['let go, not held', 'it springs up']
  if (!isKept(pass, index, since)) return ['let go too early', 'it springs up']
  return [
    'let go, and held',
    ofNeedle(pass.asked, index) === 'selected' ? 'by its catch' : 'without being asked',
  ]
}

/** The needle under the presser, or the next to come, in short lines. */
export const oneWords = (frame: Frame, strip: Strip, index: Needle): readonly string[] => {
  const name = needleName(index)
  if (underPresser(frame, strip) === index)
    return [name, 'under the presser', 'alone of its strip', ...oneState(frame, index)]
  return sinceLetGo(frame.x, index, frame.pass.way) < 0
    ? [name, 'next to be dipped', 'nothing to catch yet']
    : [name, 'has been let go', 'nothing to catch now']
}

/** One of the others, in short lines. */
export const otherWords = (frame: Frame, strip: Strip, index: Needle): readonly string[] => {
  const others =
    needlesOfStrip(strip, frame.condition, frame.condition.dimensions.needles).length -
    (underPresser(frame, strip) === null ? 1 : 2)
  const shift = measureOfStrip(frame.stripShifts, strip)
  const does = shift > 0 ? ['the catch moves as far', 'and passes beneath it'] : ['the catch is at rest']
  return [`${needleName(index)} and ${others} others`, 'no presser over them', ...does]
}

/** What all the catches do, in one line. */
export const allWords = (frame: Frame, strip: Strip): string => {
  const all = needlesOfStrip(strip, frame.condition, frame.condition.dimensions.needles).length
  if (measureOfStrip(frame.stripShifts, strip) <= 0) return `all ${all} catches at rest`
  return underPresser(frame, strip) === null
    ? `all ${all} catches move, over no dipped butt`
    : `the ${all - 1} other catches move as far and catch nothing`
}

const stripSentence = (run: Run, frame: Frame, strip: Strip): string => {
  const shift = measureOfStrip(frame.stripShifts, strip)
  const push = pushOn(frame, strip)
  const left = leftOver(frame, strip)
  switch (stripFault(run, strip)) {
    case 'seized':
      return push > 0
        ? `Strip ${strip} is seized: a rocker pushes ${millimetres(push)} and the strip does not move.`
        : `Strip ${strip} is seized and does not move.`
    case 'stuck shifted':
      return `Strip ${strip} is stuck, shifted ${millimetres(shift)}, with or without a push.`
    case 'slow':
      if (left > 0)
        return `Strip ${strip} is slow: the push has passed, and ${millimetres(left)} of its shift is left.`
  }
  return shift > 0
    ? `Strip ${strip} has shifted ${millimetres(shift)}; its catches come over the spur of a dipped butt from ${millimetres(frame.condition.reach)} on.`
    : `Strip ${strip} is at rest against its stop.`
}

/** Figure 5 in words. */
export const describeStrip = (run: Run, frame: Frame): string => {
  const strip = stripShown(run, frame)
  const all = needlesOfStrip(strip, frame.condition, frame.condition.dimensions.needles).length
  const under = underPresser(frame, strip)
  const columns = listed(columnsOfStrip(strip).map(String))
  const moves = measureOfStrip(frame.stripShifts, strip) > 0
  const verb = moves ? 'have moved with it, all by the same shift' : 'are at rest'
  const one =
    under === null
      ? 'None of its butts is under the presser now.'
      : `Only one of its butts, ${needleName(under)}, is under the presser; the catches of the other ${all - 1} have nothing to catch.`
  return `One strip in the bed, along its whole length, worked by columns ${columns}. ${stripSentence(run, frame, strip)} Its ${all} catches ${verb}. ${one}`
}
