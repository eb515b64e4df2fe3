import { columnOfNeedle, needleName, stripOfColumn } from './bed.ts'
import { type Condition, sideOfTurn } from './condition.ts'
import { dimensions } from './dimensions.ts'
import type { Stage } from './fault-kinds.ts'
import { buttReturnOf, freeHeight, type Outcome, sortByHeight, travelTime } from './gate.ts'
import { type Column, type Needle, type Strip, toColumn } from './indices.ts'
import type { PartId } from './part.ts'
import { holePresented, pinHeight } from './pin.ts'
import { neededPush, rockerOut } from './rocker.ts'
import { type PassDrive, pinPush } from './strip.ts'
import { dueRow } from './turn.ts'

/** A needle that came out otherwise than asked, and the first stage and part at which it left the healthy path. */
export interface Departure {
  /** Index, 0 to 199. */
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

/** The columns that work the strip of `column`, itself first. */
const sharers = (column: Column): Column[] =>
  [0, 8, 16].map((step) => toColumn(((column - 1 + step) % dimensions.columns) + 1))

/** Whether a strip follows its rockers as it should. */
const isSound = (condition: Condition, strip: Strip): boolean =>
  condition.stripStuck[strip - 1] === 0 && condition.stripReturn[strip - 1] === dimensions.stripReturn

/** Pin height in mm that gives a sweep as drawn enough bite to bring a strip to the catches' reach. */
const neededHeight = dimensions.sweepEdge + (dimensions.fullBite * neededPush) / dimensions.sweepThrow - 1e-9

/** Whether a needle was on its way to being selected after each stage, and the part that decided it. */
const path = (
  condition: Condition,
  drive: PassDrive,
  index: Needle,
  result: Result,
): [Stage, boolean, () => PartId][] => {
  const column = columnOfNeedle(index)
  const pushes = sharers(column).map((sharer) => {
    const own = drive.drives[sharer - 1]!
    return { sharer, own, ...pinPush(condition, drive, own, index) }
  })
  const keeper = pushes.find(({ kept, push }) => kept && push >= neededPush)
  // At speed even a sound strip lags its rockers a little: what it still feels counts as pushed.
  const strip = stripOfColumn(column)
  const feels = result.shift >= condition.reach && isSound(condition, strip)
  const pusher = pushes.find(({ push }) => push >= neededPush)
  const pushed = pusher !== undefined || feels
  const given = pushes.find(({ sharer, push }) => rockerOut(condition, sharer, push) >= dimensions.reach)
  const ownPush = pushes[0]!.own.fullPush
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
    ['hold', result.held, () => holdPart(condition, drive, index)],
    ['gate', result.came === 'selected', () => gatePart(condition, drive, index, result)],
  ]
}

const holdPart = (condition: Condition, drive: PassDrive, index: Needle): PartId => {
  if (condition.needleGone[index] || condition.needleBent[index]) return `needle.${needleName(index)}`
  if (condition.catchBroken[index]) return `catch.${needleName(index)}`
  return `presser.${drive.way === 1 ? 'right' : 'left'}`
}

const gatePart = (condition: Condition, drive: PassDrive, index: Needle, result: Result): PartId => {
  if (result.held) return result.came === 'plain' ? 'gate.1' : 'gate.2'
  const time = travelTime(condition, dimensions.gateLag)
  const buttReturn = buttReturnOf(condition, index, drive.pass)
  const height = freeHeight(condition, index, drive.way, time, buttReturn)
  if (sortByHeight(height, dimensions.gate1) === 'plain') return 'gate.1'
  return condition.needleStiff[index]! > 0 ? `needle.${needleName(index)}` : 'retainer'
}

/** Names the first stage at which a needle left the healthy path. Asked only where it came out otherwise. */
export const reasonOf = (
  condition: Condition,
  drive: PassDrive,
  index: Needle,
  result: Result,
): Departure => {
  const { asked, came } = result
  const wanted = asked === 'selected'
  const left = path(condition, drive, index, result).find(([, isOnWay]) => isOnWay !== wanted)
  // A needle without a butt is unmoved even where nothing was asked of it, and leaves at the presser.
  if (!left) return { needle: index, asked, came, stage: 'hold', part: `needle.${needleName(index)}` }
  const [stage, , part] = left
  return { needle: index, asked, came, stage, part: part() }
}
