import { stripOfColumn } from '../../mechanism/bed.ts'
import { pinFelt, rodFelt } from '../../mechanism/by-hand.ts'
import type { Condition } from '../../mechanism/condition.ts'
import { partOfFault } from '../../mechanism/fault.ts'
import type { Frame } from '../../mechanism/frame.ts'
import { allColumns, type Column } from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import { fullShift } from '../../mechanism/rocker.ts'
import { millimetres, withUnit } from '../lists.ts'

/** The column whose pin is felt: one whose pin or rocker is broken, else the one whose needle is under the presser. */
export const columnFelt = (run: Run, frame: Frame): Column => {
  const broken = new Set(run.scenario.faults.map(partOfFault))
  return (
    allColumns.find((column) => broken.has(`pin.${column}`) || broken.has(`rocker.${column}`)) ?? frame.column
  )
}

/** Whether a pin comes up by itself and goes down lightly, each time. */
export const isPinSound = (condition: Condition, column: Column): boolean => {
  const { before, pressed, stays } = pinFelt(condition, column)
  return before > pressed && stays === 0
}

/** What a pin does that is pressed down and let go, in two short lines. */
export const pinFeltWords = (condition: Condition, column: Column): readonly [string, string] => {
  const { before, pressed, stays } = pinFelt(condition, column)
  if (before === pressed)
    return stays === 1
      ? ['It is down already', 'and stays down']
      : ['It can’t be pressed', 'as it is stuck up']
  if (stays === 0) return ['It comes up by itself', 'each time, at once']
  return ['It stays down now and then', `at ${withUnit(Math.round(stays * 100), '%')} of the turns`]
}

/** Whether a front leg that is pushed takes its strip along as far as it should. */
export const isRodSound = (condition: Condition, column: Column): boolean =>
  rodFelt(condition, column) > fullShift(condition.dimensions) - 0.05

/** What comes of a front leg that is pushed to the left, in two short lines. */
export const rodFeltWords = (condition: Condition, column: Column): readonly [string, string] => {
  const out = rodFelt(condition, column)
  const strip = stripOfColumn(column)
  if (out === 0) return [`Strip ${strip} does not move`, 'nothing is passed on']
  const follows = `Strip ${strip} follows to the right`
  return isRodSound(condition, column)
    ? [follows, 'and back when the leg is let go']
    : [follows, `late, and only ${millimetres(out)}`]
}

/** The figure of a pin felt by hand, in words. */
export const describeHandPin = (run: Run, frame: Frame): string => {
  const column = columnFelt(run, frame)
  const { condition } = frame
  return [
    `By hand, with the card out and nothing opened: pin ${column}, a wire bent like a U.`,
    'From the side: a fingertip presses its back leg lightly down and lets go.',
    `${pinFeltWords(condition, column).join(', ')}.`,
    'From the front: a fingertip pushes its front leg to the left, above the top plate; the rocker turns, and its rod goes to the right.',
    `${rodFeltWords(condition, column).join(', ')}.`,
  ].join(' ')
}
