import type { Frame } from '../../mechanism/frame.ts'
import { allColumns, allStrips, ofStrip } from '../../mechanism/indices.ts'
import { holePresented } from '../../mechanism/pin.ts'
import { wayWord } from '../frame-description.ts'
import { counted, listed } from '../lists.ts'
import { carriageWhere } from './place.ts'
import { sweepShown } from './sweep.ts'

/** Where the sweep is. */
const sweepClause = (frame: Frame): string => {
  const { column, isClear } = sweepShown(frame)
  return isClear ? 'the sweep, standing still, clear of the pins' : `the sweep, nearest to column ${column}`
}

/** Figure 1 in words: what is drawn and its state now. What happens at the carriage is the caption's to say. */
export const describeChain = (frame: Frame): string => {
  const { pass, condition, stripShifts } = frame
  const { columns, strips, needles } = condition.dimensions
  const holes = allColumns.filter((column) => holePresented(condition, pass.row, column)).length
  const shifted = allStrips.filter((strip) => ofStrip(stripShifts, strip) > 0)
  const card =
    pass.row === null
      ? `no card over the ${columns} pins`
      : `card row ${pass.row} over the ${columns} pins, with ${counted(holes, 'hole')}`
  const moved =
    shifted.length === 0
      ? 'none of them shifted'
      : `of which ${listed(shifted.map(String))} ${shifted.length === 1 ? 'is' : 'are'} shifted`
  return `From the card down to the needles: ${card}; ${sweepClause(frame)}; ${columns} rockers; ${strips} strips, ${moved}; then the butts and the needles, with the carriage ${carriageWhere(frame)}, moving ${wayWord(frame)}. Below is a map of all ${needles} needles.`
}
