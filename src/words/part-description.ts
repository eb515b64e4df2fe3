import type { Condition } from '../mechanism/condition.ts'
import { columnOfNeedle, columnsOfStrip, stripOfColumn, stripOfNeedle } from '../mechanism/bed.ts'
import { partOfFault } from '../mechanism/fault.ts'
import { type Frame, isKept, sinceLetGo } from '../mechanism/frame.ts'
import { presserDip } from '../mechanism/hold.ts'
import {
  type Column,
  type Needle,
  measureOfColumn,
  ofNeedle,
  measureOfStrip,
  type Strip,
} from '../mechanism/indices.ts'
import { type Part, type PartId, partId } from '../mechanism/part.ts'
import type { Run } from '../mechanism/pass.ts'
import { holePresented } from '../mechanism/pin.ts'
import { faultPhrase } from './faults.ts'
import { millimetres } from './lists.ts'
import { capital, partName } from './parts.ts'
import { causeOf, departureWords } from './departures.ts'

const pinNow = (frame: Frame, column: Column): string => {
  const height = measureOfColumn(frame.pinHeights, column)
  const lean = measureOfColumn(frame.pinLeans, column)
  const why = holePresented(frame.condition, frame.pass.row, column)
    ? frame.pass.row === null
      ? 'No card is there to stop it'
      : 'There is a hole over it'
    : 'The card stops it'
  const push = lean > 0 ? ` The sweep pushes it ${millimetres(lean)} to the left.` : ''
  return `${why}; its tip stands ${millimetres(height)} high.${push}`
}

const rockerNow = (frame: Frame, column: Column): string => {
  const out = measureOfColumn(frame.rockerOuts, column)
  const strip = stripOfColumn(column)
  return out > 0 ? `Gives ${millimetres(out)} to strip ${strip}.` : `At rest. It works strip ${strip}.`
}

const stripNow = (frame: Frame, strip: Strip): string => {
  const shift = measureOfStrip(frame.stripShifts, strip)
  const columns = columnsOfStrip(strip).join(', ')
  const state =
    shift <= 0
      ? 'At rest.'
      : shift >= frame.condition.reach
        ? `Shifted ${millimetres(shift)}: far enough for its catches to take a butt.`
        : `Shifted ${millimetres(shift)}: not far enough for its catches to take a butt.`
  return `${state} Worked by columns ${columns}; a catch at every eighth needle.`
}

const needleNow = (frame: Frame, index: Needle): string => {
  const { pass } = frame
  const since = sinceLetGo(frame.x, index, pass.way)
  const place = `Column ${columnOfNeedle(index, frame.condition)}, strip ${stripOfNeedle(index, frame.condition)}.`
  const { first, last } = frame.condition.bed
  if (index < first || index > last) return `Out of use. ${place}`
  if (since < 0)
    return `${frame.condition.carriagePlain ? 'The carriage has not passed it yet' : 'The presser has not let go of it yet'}. ${place}`
  const departure = pass.departures.find(({ needle }) => needle === index)
  if (departure) return `${capital(departureWords[departure.came].full)}: ${causeOf(departure)}. ${place}`
  const wasCaught = isKept(pass, index, 0)
  const outcome =
    ofNeedle(pass.came, index) === 'selected'
      ? wasCaught
        ? 'Caught and selected'
        : 'Not caught, and selected all the same'
      : wasCaught
        ? 'Caught, and plain all the same'
        : 'Not caught, and plain'
  return `${outcome}, as the card asked. ${place}`
}

const partNow = (frame: Frame, part: Part): string => {
  const { condition } = frame
  switch (part.kind) {
    case 'pin':
      return pinNow(frame, part.column)
    case 'rocker':
      return rockerNow(frame, part.column)
    case 'strip':
      return stripNow(frame, part.strip)
    case 'needle':
      return needleNow(frame, part.needle)
    case 'card':
      return frame.pass.row === null
        ? 'There is no card in the reader: nothing stops a pin.'
        : `Row ${frame.pass.row} lies over the pins. A hole lets a pin through, card stops it.`
    case 'sweep':
      if (condition.beltOff) return 'It stands still, clear of the pins, until the belt is engaged.'
      return `At column ${frame.column}. Its lower edge is ${millimetres(condition.sweepEdge)} up: ${sweepMeets(condition)}`
    case 'presser':
      if (condition.carriagePlain) return 'It stands aside: the carriage is not set to pattern.'
      return presserDip(condition, frame.pass.way) > 0
        ? `Dips each butt ${millimetres(presserDip(condition, frame.pass.way))} and lets go.`
        : 'It stands too high to dip any butt.'
    case 'gate':
      if (condition.carriagePlain) return 'It stands aside: the carriage is not set to pattern.'
      return part.gate === 1
        ? `Stops every butt that springs back to ${levelWords(condition.gate1)} the rest line: plain.`
        : 'Takes the butts that stayed down and leads their needles forward: selected.'
    case 'carriage':
      return 'Drag it along the bed. Beyond the turn mark it turns the card on.'
    case 'pawl':
    case 'turn':
    case 'belt':
    case 'catch':
    case 'lever':
    case 'pivots':
    case 'retainer':
      return ''
  }
}

/** Where a butt is that does not clear a gate's edge so far below the rest line, in mm; above it where that is negative. */
const levelWords = (below: number): string =>
  below < 0 ? `more than ${millimetres(-below)} above` : `less than ${millimetres(below)} below`

/** Which pins of ordinary height the sweep meets. */
const sweepMeets = ({ sweepEdge, dimensions }: Condition): string => {
  if (sweepEdge >= dimensions.pinHigh) return 'it passes over a pin that stands high.'
  return sweepEdge > dimensions.pinLow
    ? 'it meets a pin that stands high, and clears one that stands low.'
    : 'it meets every pin, one that stands low, too.'
}

/** A part's faults in words, each as a sentence. */
const faultSentences = (run: Run, part: PartId): string =>
  run.scenario.faults
    .filter((fault) => partOfFault(fault) === part)
    .map((fault) => `${faultPhrase(fault)}. `)
    .join('')

/** A part's name, and what it is doing now in a sentence or two. */
export const describePart = (run: Run, frame: Frame, part: Part): { name: string; doing: string } => {
  const id = partId(part)
  return { name: capital(partName(id)), doing: `${faultSentences(run, id)}${partNow(frame, part)}` }
}
