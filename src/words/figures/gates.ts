import { needleName, needlesIn } from '../../mechanism/bed.ts'
import { cams, sortedAfter } from '../../mechanism/dimensions.ts'
import { type Frame, isKept, sinceLetGo } from '../../mechanism/frame.ts'
import {
  buttReturnOf,
  freeHeight,
  type Gates,
  heightAtGate,
  heldHeight,
  letGoHeight,
  medianButtReturn,
  gatesOf,
  type Outcome,
  sortByHeight,
  springing,
  travelTime,
} from '../../mechanism/gate.ts'
import { presserDip } from '../../mechanism/hold.ts'
import type { Run } from '../../mechanism/pass.ts'
import { measureOfNeedle, type Needle, markOfNeedle } from '../../mechanism/indices.ts'
import { millimetres, needlesListed, withUnit } from '../lists.ts'
import { down } from './hold.ts'

/** What the gates do with butts without scatter: heights in mm above the rest level, and the outcome. */
export interface Sorting extends Gates {
  /** Whether the carriage is not set to pattern, so that presser and gates stand aside. */
  readonly isAside: boolean
  /** How far the presser dips a butt, whether that is enough for a catch. */
  readonly dip: number
  readonly canHold: boolean
  /** Time in ms from the presser's edge to the first gate, and with which a free butt springs up. */
  readonly time: number
  readonly buttReturn: number
  readonly free: { readonly height: number; readonly outcome: Outcome }
  readonly held: { readonly height: number; readonly outcome: Outcome }
}

/** The gates' work on butts without scatter, at the present speed and in the present condition. */
export const sortingOf = ({ condition, pass }: Frame): Sorting => {
  const dip = condition.carriagePlain ? 0 : presserDip(condition, pass.way)
  const { gateLag, catchDepth } = condition.dimensions
  const gates = gatesOf(condition)
  const time = travelTime(condition, gateLag)
  const buttReturn = medianButtReturn(condition)
  const freeAt = springing(dip, time, buttReturn)
  const heldAt = -catchDepth
  return {
    isAside: condition.carriagePlain,
    dip,
    canHold: dip >= catchDepth,
    ...gates,
    time,
    buttReturn,
    free: { height: freeAt, outcome: sortByHeight(freeAt, gates) },
    held: { height: heldAt, outcome: sortByHeight(heldAt, gates) },
  }
}

/** A butt that goes a way of its own through the carriage, and what becomes of it. */
export interface Stray {
  readonly needle: Needle
  /** Why it does: its catch has let it go before the first gate, or it is slow to spring up. */
  readonly why: 'let go too early' | 'slow'
  /** Its height in mm, above the rest level, at the first gate, and where that sends it. */
  readonly height: number
  readonly outcome: Outcome
}

const strayOf = (frame: Frame, needle: Needle, why: Stray['why']): Stray => {
  const { condition, pass } = frame
  const keptFor = measureOfNeedle(pass.keptFor, needle)
  const height = heightAtGate(condition, needle, pass.way, pass.pass, keptFor)
  return { needle, why, height, outcome: sortByHeight(height, gatesOf(condition)) }
}

/** Height in mm, above the rest level, of such a butt `behind` needles after the presser let go of it. */
export const strayHeight = ({ condition, pass }: Frame, { needle }: Stray, behind: number): number => {
  const buttReturn = buttReturnOf(condition, needle, pass.pass)
  const keptFor = measureOfNeedle(pass.keptFor, needle)
  const free = freeHeight(condition, needle, pass.way, travelTime(condition, behind), buttReturn)
  if (keptFor === 0) return free
  if (behind <= keptFor) return Math.min(heldHeight(condition, needle), free)
  return letGoHeight(condition, needle, travelTime(condition, behind - keptFor), buttReturn)
}

/** Whether a needle is between the beginning of the presser and the end of the second gate. */
const isUnderCams = ({ condition, pass, x }: Frame, needle: Needle): boolean => {
  const since = sinceLetGo(x, needle, pass.way)
  return since >= -cams.presserFlat - cams.presserRamp && since <= sortedAfter(condition.dimensions)
}

/** The butt under the cams that its catch lets go too early, the one nearest to the presser; null where none is. */
const letGoNear = (frame: Frame): Needle | null => {
  const { condition, pass, x } = frame
  const early = needlesIn(condition.bed).filter((needle) => {
    const keptFor = measureOfNeedle(pass.keptFor, needle)
    return keptFor > 0 && keptFor < condition.dimensions.gateLag && isUnderCams(frame, needle)
  })
  return early.reduce<Needle | null>(
    (best, needle) => (best === null || Math.abs(needle - x) < Math.abs(best - x) ? needle : best),
    null,
  )
}

/** The butt near the carriage that goes a way of its own; null where none does. */
export const strayNear = (frame: Frame): Stray | null => {
  if (frame.condition.carriagePlain) return null
  const early = letGoNear(frame)
  if (early !== null) return strayOf(frame, early, 'let go too early')
  const slow = slowestNear(frame)
  return slow === null ? null : strayOf(frame, slow, 'slow')
}

/** The free butt under the cams that comes lowest to the first gate, where it springs up slower than the others. */
const slowestNear = (frame: Frame): Needle | null => {
  const { condition, pass } = frame
  const time = travelTime(condition, condition.dimensions.gateLag)
  const ordinary = sortingOf(frame).free.height
  let slowest: Needle | null = null
  let lowest = ordinary - 0.05
  for (const index of needlesIn(condition.bed)) {
    if (!isUnderCams(frame, index) || isKept(pass, index, 0) || markOfNeedle(condition.needleGone, index))
      continue
    const buttReturn = buttReturnOf(condition, index, pass.pass)
    if (buttReturn <= condition.dimensions.buttReturn) continue
    const height = freeHeight(condition, index, pass.way, time, buttReturn)
    if (height < lowest) [slowest, lowest] = [index, height]
  }
  return slowest
}

/** What happens to a butt, in two short clauses: its height, and its outcome. */
export type ButtFate = readonly [string, string]

const outcomeLabels: Readonly<Record<Outcome, string>> = {
  plain: 'turned by it: plain',
  selected: 'slips under it: selected',
  unmoved: 'met by no gate: unmoved',
}

/** What happens to a free butt. */
export const freeWords = ({ free, isAside }: Sorting): ButtFate =>
  isAside
    ? ['not set to pattern', 'presser and gates stand aside: every needle plain']
    : [`free: ${down(free.height)} at the first gate`, outcomeLabels[free.outcome]]

/** What happens to a held butt. */
export const heldWords = ({ held, canHold, dip, isAside }: Sorting): ButtFate => {
  if (isAside) return ['held: none', 'no butt is dipped']
  if (!canHold) return [`held: none, with a dip of ${millimetres(dip)}`, 'too small for any catch']
  return [
    `held: ${down(held.height)} at the first gate`,
    held.outcome === 'plain' ? 'even so turned by it: plain' : 'turned by the second gate: selected',
  ]
}

/** What happens to a butt that goes a way of its own. */
export const strayWords = ({ needle, why, height, outcome }: Stray): ButtFate => [
  `${needleName(needle)}, ${why}: ${down(height)} at the first gate`,
  outcomeLabels[outcome],
]

/** The time between presser and first gate, briefly. */
export const gapWords = ({ time }: Sorting): string => withUnit(time.toFixed(time < 10 ? 1 : 0), 'ms')

/** How long a butt has between presser and first gate. */
export const timeWords = ({ condition }: Frame, sorting: Sorting): string =>
  `${condition.dimensions.gateLag} needles from presser to first gate: ${gapWords(sorting)} at ${withUnit(condition.speed, 'mm/s')}`

const needlesBetweenGates = (frame: Frame, belongs: (needle: Needle, since: number) => boolean): number[] => {
  const { condition, pass, x } = frame
  const found: number[] = []
  for (const index of needlesIn(condition.bed)) {
    const since = sinceLetGo(x, index, pass.way)
    if (since > 0 && since <= sortedAfter(condition.dimensions) && belongs(index, since)) found.push(index)
  }
  return found
}

const outcomeClauses: Readonly<Record<Outcome, string>> = {
  plain: 'is turned by it, so its needle stays plain',
  selected: 'slips under it, so its needle is selected',
  unmoved: 'is met by no gate, so its needle does not move',
}

/** A butt's height at the first gate and its outcome, as a sentence. */
const buttSentence = (butt: string, height: number, outcome: string): string =>
  `${butt} is ${down(height)} at the first gate and ${outcome}.`

const heldSentence = ({ held, canHold, dip }: Sorting): string =>
  !canHold
    ? `No butt is held: a dip of ${millimetres(dip)} is too small for any catch.`
    : buttSentence(
        'A held butt',
        held.height,
        held.outcome === 'plain'
          ? 'even so is turned by it, so its needle stays plain'
          : 'is turned by the second gate, so its needle is selected',
      )

const straySentence = ({ needle, why, height, outcome }: Stray): string =>
  buttSentence(`${needleName(needle)}, which is ${why},`, height, outcomeClauses[outcome])

/** Needles, and what they are now. */
const stateClause = (needles: readonly number[], what: string): string =>
  needles.length === 0
    ? `none is ${what}`
    : `${needlesListed(needles)} ${needles.length === 1 ? 'is' : 'are'} ${what}`

/** Figure 7 in words. */
export const describeGates = (_: Run, frame: Frame): string => {
  const sorting = sortingOf(frame)
  const stray = strayNear(frame)
  const held = needlesBetweenGates(frame, (index, since) => isKept(frame.pass, index, since))
  const free = needlesBetweenGates(
    frame,
    (index, since) => !isKept(frame.pass, index, since) && !markOfNeedle(frame.condition.needleGone, index),
  )
  const sentences = [
    `The way of the butts under a carriage that moves ${frame.pass.way === 1 ? 'right' : 'left'}, from above and from the side.`,
    `Between the presser and the second gate now ${stateClause(held, 'held')}, and ${stateClause(free, 'free')}.`,
    ...(sorting.isAside
      ? ['The carriage is not set to pattern: presser and gates stand aside, and every needle knits plain.']
      : [
          buttSentence('A free butt', sorting.free.height, outcomeClauses[sorting.free.outcome]),
          heldSentence(sorting),
        ]),
    ...(stray === null ? [] : [straySentence(stray)]),
    `From the presser to the first gate it is ${frame.condition.dimensions.gateLag} needles, which takes ${gapWords(sorting)} at ${withUnit(frame.condition.speed, 'mm/s')}.`,
    `The lower edge of the first gate is ${down(-sorting.gate1)}, that of the second ${down(-sorting.gate2)}.`,
  ]
  return sentences.join(' ')
}
