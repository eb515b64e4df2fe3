import { columnOfNeedle, columnsOfStrip, needleName, sideOfWay, stripOfColumn } from './bed.ts'
import type { Condition } from './condition.ts'
import type { Dimensions } from './dimensions.ts'
import { type PassDrive, pinPush, rockerOutAt } from './drive.ts'
import type { Stage } from './fault-kinds.ts'
import { freeHeightAtGate, heightAtGate, type Outcome, sortByHeight } from './gate.ts'
import {
  allColumns,
  type Column,
  type Needle,
  ofColumn,
  markOfNeedle,
  measureOfNeedle,
  markOfStrip,
  measureOfStrip,
  type Strip,
} from './indices.ts'
import { at } from './lookup.ts'
import type { PartId } from './part.ts'
import { holePresented, pinHeight } from './pin.ts'
import { neededPush, rockerOut } from './rocker.ts'
import { stripStates } from './states.ts'
import { biteForPush } from './sweep.ts'
import { dueRow, partOfWrongRow } from './turn.ts'

/** A needle that came out otherwise than asked, and the first stage and part at which it left the healthy path. */
export interface Departure {
  readonly needle: Needle
  /** The column of the card that the needle belongs to. */
  readonly column: Column
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
  /** How far the carriage travels until the catch lets the butt go, as in a pass. */
  readonly keptFor: number
}

/** The part that made the card show another row than the one due, or another hole in it. */
const cardPart = (condition: Condition, drive: PassDrive): PartId =>
  drive.row === dueRow(condition, drive.pass) ? 'card' : partOfWrongRow(condition, drive.pass)

/** The columns that work the strip of each column, itself first, then those to its right, around the card. */
const sharers = allColumns.map((column) => {
  const all = columnsOfStrip(stripOfColumn(column))
  const own = all.indexOf(column)
  return [...all.slice(own), ...all.slice(0, own)]
})

/** Whether a strip follows its rockers as it should. */
const isSound = (condition: Condition, strip: Strip): boolean =>
  markOfStrip(condition.stripStuck, strip) === stripStates.free &&
  measureOfStrip(condition.stripReturn, strip) === condition.dimensions.stripReturn

/** Pin height in mm that gives a sweep as drawn enough bite to bring a strip to the catches' reach. */
const neededHeight = (dimensions: Dimensions): number =>
  dimensions.sweepEdge + biteForPush(dimensions, neededPush(dimensions)) - 1e-9

/** What the column of a needle, and those that share its strip, do as the presser lets go of that needle. */
const pushesOf = (condition: Condition, drive: PassDrive, needle: Needle) =>
  ofColumn(sharers, columnOfNeedle(needle, condition)).map((sharer) => {
    const own = ofColumn(drive.drives, sharer)
    return {
      sharer,
      own,
      out: rockerOutAt(condition, drive, own, needle),
      ...pinPush(condition, drive, own, needle),
    }
  })

type Pushes = ReturnType<typeof pushesOf>

/** The part because of which no rocker gave what its pin was pushed by; `pusher` is the pin. */
const rockerPart = (condition: Condition, { sharer, push, out }: Pushes[number]): PartId =>
  condition.pivotsLoose > 0 && out < condition.reach && rockerOut(condition, sharer, push) >= condition.reach
    ? 'pivots'
    : `rocker.${sharer}`

/** Whether a needle was on its way to being selected after each stage, and the part that decided it. */
const path = (
  condition: Condition,
  drive: PassDrive,
  needle: Needle,
  result: Result,
): [Stage, boolean, () => PartId][] => {
  const column = columnOfNeedle(needle, condition)
  const pushes = pushesOf(condition, drive, needle)
  const { dimensions } = condition
  const needed = neededPush(dimensions)
  const keeper = pushes.find(({ kept, push }) => kept && push >= needed)
  // At speed even a sound strip lags its rockers a little: what it still feels counts as pushed.
  const strip = stripOfColumn(column)
  const feels = result.shift >= condition.reach && isSound(condition, strip)
  const pusher = pushes.find(({ push }) => push >= needed)
  const pushed = pusher !== undefined || feels
  const given = pushes.find(({ out }) => out >= dimensions.reach)
  const isWeak = at(pushes, 0).own.fullPush < needed && !condition.beltOff
  return [
    ['card', holePresented(condition, drive.row, column), () => cardPart(condition, drive)],
    [
      'pin',
      pinHeight(condition, drive, column) >= neededHeight(dimensions) || keeper !== undefined,
      () => `pin.${keeper?.sharer ?? column}`,
    ],
    ['sweep', pushed, () => (!pushed && isWeak ? 'sweep' : 'belt')],
    ['rocker', given !== undefined || feels, () => rockerPart(condition, (given ?? pusher)!)],
    ['strip', result.shift >= condition.reach, () => `strip.${strip}`],
    [
      'hold',
      result.keptFor > 0 && !isLetGoEarly(condition, drive, needle, result),
      () => holdPart(condition, drive, needle, result),
    ],
    ['gate', result.came === 'selected', () => gatePart(condition, drive, needle, result)],
  ]
}

/** Whether a catch let a butt go so early that a first gate as drawn stops it. */
const isLetGoEarly = (condition: Condition, drive: PassDrive, needle: Needle, { keptFor }: Result): boolean =>
  keptFor > 0 &&
  keptFor < condition.dimensions.gateLag &&
  heightAtGate(condition, needle, drive.way, drive.pass, keptFor) > -condition.dimensions.gate1

const isMarked = (marks: Uint8Array, needle: Needle): boolean => markOfNeedle(marks, needle) === 1

const holdPart = (condition: Condition, drive: PassDrive, needle: Needle, { keptFor }: Result): PartId => {
  if (condition.carriagePlain) return 'carriage'
  if (isMarked(condition.needleGone, needle) || isMarked(condition.needleBent, needle))
    return `needle.${needleName(needle)}`
  if (isMarked(condition.catchBroken, needle)) return `catch.${needleName(needle)}`
  return keptFor > 0 ? 'belt' : `presser.${sideOfWay(drive.way)}`
}

const gatePart = (condition: Condition, drive: PassDrive, needle: Needle, result: Result): PartId => {
  if (result.keptFor > 0) return result.came === 'plain' ? 'gate.1' : 'gate.2'
  const height = freeHeightAtGate(condition, needle, drive.way, drive.pass)
  if (sortByHeight(height, condition.dimensions) === 'plain') return 'gate.1'
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
  const departure = { needle, column: columnOfNeedle(needle, condition), asked, came }
  const wanted = asked === 'selected'
  const left = path(condition, drive, needle, result).find(([, isOnWay]) => isOnWay !== wanted)
  // A needle without a butt is unmoved even where nothing was asked of it, and leaves at the presser.
  if (!left) return { ...departure, stage: 'hold', part: `needle.${needleName(needle)}` }
  const [stage, , part] = left
  return { ...departure, stage, part: part() }
}
