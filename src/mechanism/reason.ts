import { columnOfNeedle, columnsOfStrip, needleName, sideOfTurn, sideOfWay, stripOfColumn } from './bed.ts'
import type { Condition } from './condition.ts'
import { dimensions } from './dimensions.ts'
import type { Stage } from './fault-kinds.ts'
import { freeHeightAtGate, type Outcome, sortByHeight } from './gate.ts'
import { type Column, type Needle, ofColumn, markOfNeedle, measureOfNeedle, markOfStrip, measureOfStrip, type Strip } from './indices.ts'
import { at } from './lookup.ts'
import type { PartId } from './part.ts'
import { holePresented, pinHeight } from './pin.ts'
import { neededPush, rockerOut } from './rocker.ts'
import { stripStates } from './states.ts'
import { type PassDrive, pinPush } from './strip.ts'
import { biteForPush } from './sweep.ts'
import { dueRow } from './turn.ts'

/** A needle that came out otherwise than asked, and the first stage and part at which it left the healthy path. */
export interface Departure {
  readonly needle: Needle
  readonly asked: Outcome
  readonly came: Outcome
  readonly stage: Stage
  /** The part's id, such as `strip.3`. */
  readonly part: PartId
}

interface Result {
  readonly asked: Outcome
  readonly came: Outcome
  readonly shift: number
  readonly held: boolean
}

/** The part that made the card show another row than the one due, or another hole in it. */
const cardPart = (condition: Condition, drive: PassDrive): PartId => {
  if (drive.row === dueRow(condition, drive.pass) || condition.cardLocked) return 'card'
  if (condition.pawlDouble) return 'pawl'
  const firstShort = Math.min(...condition.shortTurns, Infinity)
  const firstDead = condition.pawlDead.right ? 2 : condition.pawlDead.left ? 3 : Infinity
  return firstShort <= firstDead ? 'turn' : `pawl.${sideOfTurn(firstDead)}`
}

/** The columns that work the strip of `column`, itself first, then those to its right, around the card. */
const sharers = (column: Column): Column[] => {
  const all = columnsOfStrip(stripOfColumn(column))
  const own = all.indexOf(column)
  return [...all.slice(own), ...all.slice(0, own)]
}

/** Whether a strip follows its rockers as it should. */
const isSound = (condition: Condition, strip: Strip): boolean =>
  markOfStrip(condition.stripStuck, strip) === stripStates.free &&
  measureOfStrip(condition.stripReturn, strip) === dimensions.stripReturn

/** Pin height in mm that gives a sweep as drawn enough bite to bring a strip to the catches' reach. */
const neededHeight = dimensions.sweepEdge + biteForPush(neededPush) - 1e-9

/** Whether a needle was on its way to being selected after each stage, and the part that decided it. */
const path = (
  condition: Condition,
  drive: PassDrive,
  needle: Needle,
  result: Result,
): [Stage, boolean, () => PartId][] => {
  const column = columnOfNeedle(needle)
  const pushes = sharers(column).map((sharer) => {
    const own = ofColumn(drive.drives, sharer)
    return { sharer, own, ...pinPush(condition, drive, own, needle) }
  })
  const keeper = pushes.find(({ kept, push }) => kept && push >= neededPush)
  // At speed even a sound strip lags its rockers a little: what it still feels counts as pushed.
  const strip = stripOfColumn(column)
  const feels = result.shift >= condition.reach && isSound(condition, strip)
  const pusher = pushes.find(({ push }) => push >= neededPush)
  const pushed = pusher !== undefined || feels
  const given = pushes.find(({ sharer, push }) => rockerOut(condition, sharer, push) >= dimensions.reach)
  const ownPush = at(pushes, 0).own.fullPush
  return [
    ['card', holePresented(condition, drive.row, column), () => cardPart(condition, drive)],
    [
      'pin',
      pinHeight(condition, drive.row, column) >= neededHeight || keeper !== undefined,
      () => `pin.${keeper?.sharer ?? column}`,
    ],
    ['sweep', pushed, () => (!pushed && ownPush < neededPush ? 'sweep' : 'belt')],
    ['rocker', given !== undefined || feels, () => `rocker.${(given ?? pusher)!.sharer}`],
    ['strip', result.shift >= condition.reach, () => `strip.${strip}`],
    ['hold', result.held, () => holdPart(condition, drive, needle)],
    ['gate', result.came === 'selected', () => gatePart(condition, drive, needle, result)],
  ]
}

const isMarked = (marks: Uint8Array, needle: Needle): boolean => markOfNeedle(marks, needle) === 1

const holdPart = (condition: Condition, drive: PassDrive, needle: Needle): PartId => {
  if (isMarked(condition.needleGone, needle) || isMarked(condition.needleBent, needle))
    return `needle.${needleName(needle)}`
  if (isMarked(condition.catchBroken, needle)) return `catch.${needleName(needle)}`
  return `presser.${sideOfWay(drive.way)}`
}

const gatePart = (condition: Condition, drive: PassDrive, needle: Needle, result: Result): PartId => {
  if (result.held) return result.came === 'plain' ? 'gate.1' : 'gate.2'
  const height = freeHeightAtGate(condition, needle, drive.way, drive.pass)
  if (sortByHeight(height, dimensions.gate1) === 'plain') return 'gate.1'
  return measureOfNeedle(condition.needleStiff, needle) > 0 ? `needle.${needleName(needle)}` : 'retainer'
}

/** Names the first stage at which a needle left the healthy path. Asked only where it came out otherwise. */
export const reasonOf = (
  condition: Condition,
  drive: PassDrive,
  needle: Needle,
  result: Result,
): Departure => {
  const { asked, came } = result
  const wanted = asked === 'selected'
  const left = path(condition, drive, needle, result).find(([, isOnWay]) => isOnWay !== wanted)
  // A needle without a butt is unmoved even where nothing was asked of it, and leaves at the presser.
  if (!left) return { needle, asked, came, stage: 'hold', part: `needle.${needleName(needle)}` }
  const [stage, , part] = left
  return { needle, asked, came, stage, part: part() }
}
