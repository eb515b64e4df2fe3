import { columnOfNeedle, needleName, stripOfNeedle } from '../../mechanism/bed.ts'
import { isStripFault, type StripFault } from '../../mechanism/fault.ts'
import { type Frame, needleUnderPresser } from '../../mechanism/frame.ts'
import { measureOfNeedle, type Needle } from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import { stripShift } from '../../mechanism/strip.ts'
import { beltLead, wrap } from '../../mechanism/sweep.ts'
import { wayWord } from '../frame-description.ts'
import { listed, millimetres, withUnit } from '../lists.ts'

/** A number of needles, to a tenth: 3 needles, 1 needle, 0.5 needles. */
const needleCount = (count: number): string => {
  const rounded = Math.round(count * 10) / 10
  return `${rounded} needle${rounded === 1 ? '' : 's'}`
}

/** By how many needles the sweep meets each pin earlier (positive) or later than it should, in this pass. */
const sweepAhead = ({ condition, pass }: Frame): number => {
  const ahead = wrap(beltLead(condition, pass.way))
  return Math.abs(ahead) < 0.05 ? 0 : ahead
}

/** How the sweep is out of step, in a few words; null where it is in step. */
export const beltWords = (frame: Frame): string | null => {
  if (frame.condition.beltOff) return 'belt not engaged'
  const ahead = sweepAhead(frame)
  return ahead === 0 ? null : `${needleCount(Math.abs(ahead))} ${ahead > 0 ? 'early' : 'late'}`
}

/** What is wrong with a strip, in a few words. */
export const stripState = (fault: StripFault): string => {
  switch (fault.kind) {
    case 'strip.seized':
      return 'seized'
    case 'strip.over':
      return 'stuck shifted'
    case 'strip.slow':
      return `slow, ${withUnit(fault.amount, 'ms')}`
  }
}

const shiftedNow = (frame: Frame): string => {
  const moving = [...frame.stripShifts].flatMap((shift, n) =>
    shift > 0 ? [`strip ${n + 1} by ${millimetres(shift)}`] : [],
  )
  return moving.length === 0 ? 'No strip is shifted now.' : `Shifted now: ${listed(moving)}.`
}

/** How long a catch holds the butt that it takes. */
const holdSentence = ({ condition, pass }: Frame, needle: Needle): string => {
  const keptFor = measureOfNeedle(pass.keptFor, needle)
  if (keptFor === 0) return ''
  return keptFor < condition.dimensions.gateLag
    ? ` The strip falls below ${millimetres(condition.dimensions.letGo)} before the first gate, and the catch lets go.`
    : ` It stays at ${millimetres(condition.dimensions.letGo)} or more up to the first gate, so the butt is held.`
}

const atLetGo = (frame: Frame): string => {
  const needle = needleUnderPresser(frame.condition, frame.x)
  if (needle === null) return 'The presser is not over a needle in use.'
  if (frame.condition.carriagePlain) return 'The presser stands aside: the carriage is not set to pattern.'
  const strip = stripOfNeedle(needle, frame.condition)
  const shift = stripShift(frame.condition, frame.pass.drive, strip, needle)
  const isFar = shift >= frame.condition.reach
  const found = isFar
    ? `shifted ${millimetres(shift)}, far enough for its catch`
    : shift > 0
      ? `shifted only ${millimetres(shift)}, short of the ${millimetres(frame.condition.reach)} that a catch needs`
      : 'at rest'
  return `The presser lets go of ${needleName(needle)}, column ${columnOfNeedle(needle, frame.condition)}, and finds strip ${strip} ${found}.${holdSentence(frame, needle)}`
}

/** The timing chart in words. */
export const describeTiming = (run: Run, frame: Frame): string => {
  const belt = beltWords(frame)
  const slow = run.scenario.faults
    .filter(isStripFault)
    .map((fault) => `Strip ${fault.at[0]} is ${stripState(fault)}.`)
  return [
    `The carriage moves ${wayWord(frame)}. Each strip has a lane; a curve in it is one shift. A mark stands wherever the presser lets go of one of that strip’s needles, and a line goes from there to the first gate: so long the strip has to stay over.`,
    frame.condition.beltOff
      ? 'The belt is not engaged: the sweep stands still and pushes no pin.'
      : belt === null
        ? ''
        : `The sweep meets every pin ${belt}.`,
    ...slow,
    atLetGo(frame),
    shiftedNow(frame),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}
