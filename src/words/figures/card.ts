import { modulo, passEnds, sideOfTurn } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { partOfFault } from '../../mechanism/fault.ts'
import type { Frame } from '../../mechanism/frame.ts'
import { type PartKind, partOf } from '../../mechanism/part.ts'
import type { Run } from '../../mechanism/pass.ts'
import { rowRead, stepsAtTurn, standstill } from '../../mechanism/turn.ts'
import { faultPhrase } from '../faults.ts'
import { wayWord } from '../frame-description.ts'

/** How many rows the row visible above the reader is ahead of the row being read: a choice of the drawing. */
export const rowsBetween = 5

/** The row visible just above the reader while `row` is read; rows from 1, the card a loop of `count`. */
export const rowSeen = (row: number, count: number): number => modulo(row - 1 + rowsBetween, count) + 1

/** The phase of a pass, as far as the next turn depends on it. */
export type PassPhase = 'turned' | 'bed' | 'beyond'

/** Whether the carriage has just turned, is over the bed, or is past the last needle on its way to the mark. */
export const phaseOf = (frame: Frame): PassPhase => {
  const { start } = passEnds(frame.pass.pass, frame.condition.bed)
  if (frame.x === start) return 'turned'
  const { first, last } = frame.condition.bed
  return (frame.pass.way === 1 ? frame.x > last : frame.x < first) ? 'beyond' : 'bed'
}

/** The turn that decides what is shown: the one just made, or the one to come. */
export const turnShown = (frame: Frame): number => {
  const { pass } = frame.pass
  return phaseOf(frame) === 'turned' && pass > 1 ? pass : pass + 1
}

const notStepped = (frame: Frame, turn: number, isPast: boolean): string => {
  const { condition } = frame
  const side = sideOfTurn(turn)
  switch (standstill(condition, turn)) {
    case 'belt':
      return 'The belt is not engaged'
    case 'card':
      return 'The card is locked'
    case 'lever':
      return 'The lever is set to read each row twice'
    case 'turn':
      return isPast
        ? `The carriage turned short of the ${side} mark`
        : `This pass turns short of the ${side} mark`
    case 'pawl':
    case null:
      if (condition.pawlDead[side]) return `The ${side} pawl is dead`
      return `The ${side} pawl ${isPast ? 'has slipped' : 'will slip'}`
  }
}

/** What the turn shown does, or did, to the card, in a sentence or two. */
export const turnWords = (frame: Frame): string => {
  const { condition, pass } = frame
  const turn = turnShown(frame)
  const row = rowRead(condition, turn)
  if (pass.row === null || row === null) return 'There is no card to step.'
  const side = sideOfTurn(turn)
  const steps = stepsAtTurn(condition, turn)
  const two = steps === 2 ? ' two rows' : ''
  if (turn === pass.pass)
    return steps === 0
      ? `${notStepped(frame, turn, true)}: row ${row} is read again.`
      : `The ${side} pawl has stepped the card${two}: row ${row} is read.`
  const stay = phaseOf(frame) === 'beyond' && steps > 0 ? ` Turn before it and row ${pass.row} stays.` : ''
  return steps === 0
    ? `${notStepped(frame, turn, false)}: row ${row} will be read again.`
    : `At the ${side} mark the ${side} pawl will step the card${two} to row ${row}.${stay}`
}

const rowsSentence = (frame: Frame): string => {
  const { card } = frame.condition
  const { row } = frame.pass
  if (!card || row === null) return 'There is no card in the reader.'
  return `Row ${row} of ${card.length} lies over the pins, deep in the reader. The row you see above the reader is row ${rowSeen(row, card.length)}: in this drawing it is ${rowsBetween} rows ahead.`
}

const carriageSentence = (frame: Frame): string => {
  const side = frame.pass.way === 1 ? 'right' : 'left'
  switch (phaseOf(frame)) {
    case 'turned':
      return `The carriage stands at the ${side === 'right' ? 'left' : 'right'} turn mark, ready to go ${wayWord(frame)}.`
    case 'beyond':
      return `The carriage is past the last needle but has not reached the ${side} turn mark, ${dimensions.turnMark} needles beyond it.`
    case 'bed':
      return `The carriage moves ${wayWord(frame)}.`
  }
}

/** Kinds of part whose faults this figure shows. */
const shown: readonly PartKind[] = ['card', 'pawl', 'turn']

/** The card and its turn in words. */
export const describeCard = (run: Run, frame: Frame): string => {
  const broken = run.scenario.faults
    .filter((fault) => shown.includes(partOf(partOfFault(fault)).kind))
    .map((fault) => `${faultPhrase(fault)}.`)
  return [rowsSentence(frame), ...broken, carriageSentence(frame), turnWords(frame)].join(' ')
}
