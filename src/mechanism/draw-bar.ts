import { columnsOfStrip } from './bed.ts'
import type { Frame } from './frame.ts'
import {
  allColumns,
  allStrips,
  markOfColumn,
  markOfStrip,
  measureOfColumn,
  measureOfStrip,
} from './indices.ts'
import { rockerOut } from './rocker.ts'
import { stripStates } from './states.ts'
import { fullPush } from './sweep.ts'

/**
 * The machine at a turn, with its draw bar so high, in mm: no pin is higher than that, a pin below the sweep's edge is
 * pushed no longer, and what it pushed comes back. What has lost the spring that brings it back stays.
 */
export const withDrawBar = (frame: Frame, drawBar: number): Frame => {
  const { condition } = frame
  const pinHeights = frame.pinHeights.map((height) => Math.min(height, drawBar))
  const pinLeans = Float64Array.from(allColumns, (column) => {
    const lean = measureOfColumn(frame.pinLeans, column)
    const most = fullPush(condition, measureOfColumn(pinHeights, column))
    return markOfColumn(condition.pinOver, column) === 1 ? lean : Math.min(lean, most)
  })
  const rockerOuts = Float64Array.from(allColumns, (column) => {
    const out = measureOfColumn(frame.rockerOuts, column)
    const most = rockerOut(condition, column, measureOfColumn(pinLeans, column))
    return markOfColumn(condition.pinOver, column) === 1 ? out : Math.min(out, most)
  })
  const stripShifts = Float64Array.from(allStrips, (strip) => {
    const shift = measureOfStrip(frame.stripShifts, strip)
    const most = Math.max(...columnsOfStrip(strip).map((column) => measureOfColumn(rockerOuts, column)))
    return markOfStrip(condition.stripStuck, strip) === stripStates.over ? shift : Math.min(shift, most)
  })
  return { ...frame, drawBar, pinHeights, pinLeans, rockerOuts, stripShifts }
}
