import { columnOfNeedle, needleName, passEnds, stripOfColumn } from '../mechanism/bed.ts'
import { type Frame, needleUnderPresser, sinceLetGo, isKept } from '../mechanism/frame.ts'
import { visitAt } from '../mechanism/drive.ts'
import { type Column, type Needle, measureOfColumn, measureOfStrip } from '../mechanism/indices.ts'
import { holePresented } from '../mechanism/pin.ts'
import type { Departure } from '../mechanism/reason.ts'
import { sweepWindow } from '../mechanism/sweep.ts'
import { needlesListed } from './lists.ts'
import { capital, partNames } from './parts.ts'
import { causeOf, departureWords } from './departures.ts'

/** Which way the carriage goes, in words. */
export const wayWord = (frame: Frame): string => (frame.pass.way === 1 ? 'right' : 'left')

const rowPhrase = (frame: Frame): string =>
  frame.pass.row === null ? 'There is no card' : `Card row ${frame.pass.row} is read`

const atEnd = (frame: Frame): string | null => {
  const { start } = passEnds(frame.pass.pass, frame.condition.bed)
  const first = frame.pass.way === 1 ? frame.condition.bed.first : frame.condition.bed.last
  const side = frame.pass.way === 1 ? 'left' : 'right'
  if (frame.x === start)
    return `The carriage stands beyond the ${side} turn mark, ready for pass ${frame.pass.pass} to the ${wayWord(frame)}. ${rowPhrase(frame)}: ${frame.pass.row === null ? 'every pin stands high' : 'a pin stands high wherever it has a hole'}.`
  // Before the presser is over the first needle: it may be on its way down on it.
  if (sinceLetGo(frame.x, first, frame.pass.way) < 0 && needleUnderPresser(frame.condition, frame.x) === null)
    return `The carriage comes up to the first needle, ${needleName(first)}, moving ${wayWord(frame)}.`
  return null
}

/** Whether the sweep is over the pin of a column, so that it pushes that pin if it stands high. */
const isUnderSweep = ({ condition, pass, x }: Frame, column: Column): boolean =>
  sweepWindow(condition.dimensions, visitAt(condition, pass.way, column, x).past) > 0

/** Where the sweep is while the presser is at a needle of this column, where it is not over that column's pin. */
const sweepElsewhere = (frame: Frame, needle: Needle, column: Column): string =>
  frame.condition.beltOff
    ? 'The belt is not engaged, so the sweep stands still and pushes no pin.'
    : `The sweep is at column ${frame.column}, while the presser is at ${needleName(needle)}, of column ${column}.`

const chainSentence = (frame: Frame, column: Column): string => {
  const strip = stripOfColumn(column)
  const lead = `Column ${column} is under the sweep.`
  const hole = holePresented(frame.condition, frame.pass.row, column)
  const high = measureOfColumn(frame.pinHeights, column) > frame.condition.dimensions.sweepEdge
  const shift = measureOfStrip(frame.stripShifts, strip)
  const out = measureOfColumn(frame.rockerOuts, column)
  const source =
    frame.pass.row === null
      ? 'No card stops its pin, so it stands high'
      : hole
        ? 'It has a hole, so its pin stands high'
        : 'It has no hole, so its pin stays low'
  if (hole !== high)
    return `${lead} ${hole ? 'It has a hole, but its pin stays low' : 'It has no hole, but its pin stands high'}.`
  if (!high)
    return `${lead} ${source} and the sweep passes over it${shift >= frame.condition.reach ? `; yet strip ${strip} is shifted` : ''}.`
  if (out <= 0) return `${lead} ${source}, but its rocker gives no push.`
  if (shift < out) return `${lead} ${source} and its rocker pushes, but strip ${strip} does not move.`
  if (shift < frame.condition.reach) return `${lead} ${source} and strip ${strip} begins to shift.`
  return `${lead} ${source} and strip ${strip} shifts.`
}

const needleSentence = (frame: Frame, index: Needle, departure: Departure | undefined): string => {
  const name = needleName(index)
  if (departure) return `${name} ${departureWords[departure.came].clause}: ${causeOf(departure)}.`
  if (frame.condition.carriagePlain) return `${name} is not pressed down: plain.`
  if (isKept(frame.pass, index, 0)) return `${name} is caught and stays down: selected.`
  return `${name} is let go and springs back up: plain.`
}

/** The needles that came out wrong so far, with the parts that caused it; empty while there are none. */
const departuresSentence = (departures: readonly Departure[]): string =>
  (['plain', 'selected', 'unmoved'] as const)
    .flatMap((outcome) => {
      const some = departures.filter(({ came }) => came === outcome)
      if (some.length === 0) return []
      const all = some.length === 1 ? '' : 'all '
      return [
        `${capital(departureWords[outcome].full)} so far: ${needlesListed(some.map(({ needle }) => needle))}, ${all}because of ${partNames(some.map(({ part }) => part))}.`,
      ]
    })
    .join(' ')

/** What happens at the carriage's present position, in a few sentences: the sentence under the machine. */
export const describeFrame = (frame: Frame): string => {
  const end = atEnd(frame)
  if (end !== null) return end
  const needle = needleUnderPresser(frame.condition, frame.x)
  const missed = departuresSentence(frame.departures)
  if (needle === null) {
    const all = frame.pass.departures.length === 0 ? 'Every needle came out as the card asked.' : missed
    return `The last needle is sorted. Go on to the turn mark and the card steps; turn back before it and this row is read again. ${all}`
  }
  const departure = frame.pass.departures.find((d) => d.needle === needle)
  const column = columnOfNeedle(needle, frame.condition)
  const parts = [
    !frame.condition.beltOff && isUnderSweep(frame, column)
      ? chainSentence(frame, column)
      : sweepElsewhere(frame, needle, column),
    needleSentence(frame, needle, departure),
    missed,
  ]
  return parts
    .filter((part) => part !== '')
    .map(capital)
    .join(' ')
}
