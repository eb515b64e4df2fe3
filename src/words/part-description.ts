import { columnOfNeedle, needleIndex, stripOfColumn, stripOfNeedle } from '../mechanism/bed.ts'
import { presserOf } from '../mechanism/condition.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { partOfFault } from '../mechanism/fault.ts'
import { type Frame, sinceLetGo } from '../mechanism/frame.ts'
import type { Run } from '../mechanism/pass.ts'
import { holePresented } from '../mechanism/pin.ts'
import { faultPhrase } from './faults.ts'
import { millimetres } from './lists.ts'
import { capital, partName } from './parts.ts'
import { causeOf, departureWords } from './departures.ts'

const pinDoing = (frame: Frame, column: number): string => {
  const height = frame.pinHeights[column - 1] ?? 0
  const lean = frame.pinLeans[column - 1] ?? 0
  const why = holePresented(frame.condition, frame.pass.row, column)
    ? frame.pass.row === null
      ? 'No card is there to stop it'
      : 'There is a hole over it'
    : 'The card stops it'
  const push = lean > 0 ? ` The sweep pushes it ${millimetres(lean)} aside.` : ''
  return `${why}; its tip stands ${millimetres(height)} high.${push}`
}

const rockerDoing = (frame: Frame, column: number): string => {
  const out = frame.rockerOuts[column - 1] ?? 0
  const strip = stripOfColumn(column)
  return out > 0 ? `Gives ${millimetres(out)} to strip ${strip}.` : `At rest. It works strip ${strip}.`
}

const stripDoing = (frame: Frame, strip: number): string => {
  const shift = frame.stripShifts[strip - 1] ?? 0
  const columns = [0, 8, 16].map((step) => strip + step).join(', ')
  const state =
    shift <= 0
      ? 'At rest.'
      : shift >= frame.condition.reach
        ? `Shifted ${millimetres(shift)}: its catches cover their butts.`
        : `Shifted ${millimetres(shift)}: not yet far enough for its catches.`
  return `${state} Worked by columns ${columns}; a catch at every eighth needle.`
}

const needleDoing = (frame: Frame, index: number): string => {
  const { pass } = frame
  const since = sinceLetGo(frame.x, index, pass.way)
  const place = `Column ${columnOfNeedle(index)}, strip ${stripOfNeedle(index)}.`
  const { first, last } = frame.condition.bed
  if (index < first || index > last) return `Out of use. ${place}`
  if (since < 0) return `The presser has not let go of it yet. ${place}`
  const departure = pass.departures.find(({ needle }) => needle === index)
  if (departure) return `${capital(departureWords[departure.came].full)}: ${causeOf(departure)}. ${place}`
  return `${pass.came[index] === 'selected' ? 'Caught and selected' : 'Sprung up and plain'}, as the card asked. ${place}`
}

const other = (frame: Frame, part: string): string => {
  const { condition } = frame
  switch (part) {
    case 'card':
      return frame.pass.row === null
        ? 'There is no card in the reader: every pin stands high.'
        : `Row ${frame.pass.row} lies over the pins. A hole lets a pin through, card stops it.`
    case 'sweep':
      return `Over column ${frame.column}. Its lower edge is ${millimetres(condition.sweepEdge)} up: it meets high pins and clears low ones.`
    case 'presser':
      return `Dips each butt ${millimetres(presserOf(condition, frame.pass.way))} and lets go.`
    case 'gate.1':
      return `Stops every butt that sprang back above ${millimetres(-condition.gate1)}, measured from the rest line: plain.`
    case 'gate.2':
      return 'Takes the butts that stayed down and leads their needles forward: selected.'
    case 'carriage':
      return 'Drag it along the bed. Beyond the turn mark it turns the card on.'
    default:
      return ''
  }
}

/** Ids of the faults' parts, with the faults in words, as a link from a part to what is wrong with it. */
const wrong = (run: Run, part: string): string =>
  run.scenario.faults
    .filter((fault) => partOfFault(fault) === part)
    .map((fault) => `${faultPhrase(fault)}. `)
    .join('')

/** A part's name and what it is doing now, in a sentence or two. `part` is an id such as `pin.4`. */
export const describePart = (run: Run, frame: Frame, part: string): { name: string; doing: string } => {
  const [kind, which = ''] = part.split('.')
  const number = Number(which)
  const doing =
    kind === 'pin'
      ? pinDoing(frame, number)
      : kind === 'rocker'
        ? rockerDoing(frame, number)
        : kind === 'strip'
          ? stripDoing(frame, number)
          : kind === 'needle'
            ? needleDoing(frame, needleIndex(which) ?? dimensions.needles / 2)
            : other(frame, part)
  return { name: capital(partName(part)), doing: `${wrong(run, part)}${doing}` }
}
