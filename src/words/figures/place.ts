import { needleName } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { type Frame, sinceLetGo } from '../../mechanism/frame.ts'
import { toNeedle, ofNeedle } from '../../mechanism/indices.ts'
import { counted } from '../lists.ts'
import { sweepShown } from './sweep.ts'

/** Where the parts are, in every state. */
const overview = ({ condition }: Frame): string =>
  [
    `The whole machine, seen at an angle, its deck and its reader cut open. A long bed holds ${condition.dimensions.needles} needles side by side, each with a butt standing up.`,
    `Behind the butts, in the bed and under its deck, ${dimensions.strips} strips run its whole length; their catches reach up and forward to the butts.`,
    `Over the strips stands the reader: the card lies over the back legs of its ${dimensions.columns} pins and stands up behind them; their front legs stand up in the way of the sweep. Against each front leg rests a rocker, whose rod goes down through a slot of the plate to one strip.`,
    'The carriage slides over the needles. Beneath it are the presser and the two gates. It pulls a belt, which carries the sweep past the pins.',
  ].join(' ')

/** Where the carriage is, after “the carriage is”. */
export const carriageWhere = (frame: Frame): string => {
  const { first, last } = frame.condition.bed
  const nearest = Math.round(frame.x)
  if (nearest < first) return 'to the left of the needles'
  return nearest > last ? 'to the right of the needles' : `at ${needleName(toNeedle(nearest))}`
}

/** How many needles the gates have sorted in this pass, and to where. */
const sortedSentence = (frame: Frame): string => {
  if (frame.condition.carriagePlain)
    return 'The carriage is not set to pattern: the gates stand aside, and no needle leaves the line.'
  const { pass, condition, x } = frame
  const { first, last } = condition.bed
  const found = { selected: 0, plain: 0, unmoved: 0, ahead: 0 }
  for (let index = first; index <= last; index++) {
    const isSorted = sinceLetGo(x, index, pass.way) >= condition.dimensions.gateLag
    found[isSorted ? ofNeedle(pass.came, index) : 'ahead']++
  }
  const { selected, plain, ahead } = found
  if (selected + plain === 0) return 'No needle is sorted yet.'
  const rest = ahead === 0 ? '' : `, ${ahead} still to come`
  return `Behind it ${counted(selected, 'needle')} ${selected === 1 ? 'stands' : 'stand'} forward and ${plain} back${rest}.`
}

/** Figure 0 in words: where the parts are, and their state now. */
export const describePlace = (frame: Frame): string => {
  const { pass } = frame
  const { column, isClear } = sweepShown(frame)
  const read =
    pass.row === null ? 'There is no card in the reader' : `Card row ${pass.row} lies over the pins`
  return [
    overview(frame),
    `The carriage is ${carriageWhere(frame)}, moving ${pass.way === 1 ? 'right' : 'left'} in pass ${pass.pass}.`,
    isClear
      ? `${read}. The belt is not engaged: the sweep stands still, clear of the pins.`
      : `${read}, and the sweep is nearest to pin ${column}.`,
    sortedSentence(frame),
  ].join(' ')
}
