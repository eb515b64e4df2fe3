import { dimensions } from '../../mechanism/dimensions.ts'
import type { Frame } from '../../mechanism/frame.ts'
import { allColumns, type Column, markOfColumn, measureOfColumn, toColumn } from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import { holeClearance, holeNow, holePunched, midHeight, misplacement } from '../../mechanism/pin.ts'
import type { FigureOptions } from '../shared/figure-contract.ts'
import { type FigureView, viewBase } from '../shared/view.ts'
import { type SweepShown, sweepShown } from '../../words/figures/sweep.ts'
import { columnX, firstColumn, layouts, type PinsLayout, rightOf } from './layout.ts'

/** One column as the figure shows it. Lengths in mm. */
export interface ColumnView {
  readonly column: Column
  /** Middle of its pin at rest, in the picture. */
  readonly x: number
  readonly height: number
  /** Whether it is nearer to the height of a pin through a hole than to that of one stopped by card. */
  readonly isHigh: boolean
  /** How far its front leg is pushed to the right: negative, since the slots lead to the left. */
  readonly lean: number
  readonly out: number
  /** Whether there is card over it, and a hole in that card. */
  readonly hasCard: boolean
  readonly isHole: boolean
  /** Whether the hole is torn or one is blocked: other than what the card was punched with, as it lies. */
  readonly isWrong: boolean
  /** How far the hole is from its pin, along the row and along the card, and whether the pin fits. */
  readonly side: number
  readonly along: number
  readonly fits: boolean
  /** 1 where the pin is stuck up, -1 where it is stuck down. */
  readonly stuck: number
  readonly pinBroken: boolean
  readonly rockerBroken: boolean
}

export interface PinsView extends FigureView<PinsLayout> {
  /** First column of the window, with a fraction. */
  readonly first: number
  /** The columns in the window, whole or in part. */
  readonly columns: readonly ColumnView[]
  /** Where the sweep is, and the column that it is nearest to. */
  readonly sweep: SweepShown
  readonly focus: ColumnView
}

const columnOf = (frame: Frame, column: Column, x: number, broken: ReadonlySet<string>): ColumnView => {
  const { condition, pass } = frame
  const hasCard = pass.row !== null
  const own = condition.cardReversed ? dimensions.columns + 1 - column : column
  const isHole = pass.row !== null && holeNow(condition, pass.row, column)
  return {
    column,
    x,
    height: measureOfColumn(frame.pinHeights, column),
    isHigh: measureOfColumn(frame.pinHeights, column) > midHeight(condition.dimensions),
    lean: -measureOfColumn(frame.pinLeans, column) + 0,
    out: measureOfColumn(frame.rockerOuts, column),
    hasCard,
    isHole,
    isWrong: hasCard && isHole !== holePunched(condition, pass.row, toColumn(own)),
    side: condition.cardSide,
    along: condition.cardSkew * (column - (dimensions.columns + 1) / 2),
    fits: isHole && misplacement(condition, column) <= holeClearance(condition.dimensions),
    stuck: markOfColumn(condition.pinStuck, column),
    pinBroken: broken.has(`pin.${column}`),
    rockerBroken: broken.has(`rocker.${column}`),
  }
}

export const viewOf = (run: Run, frame: Frame, options: FigureOptions): PinsView => {
  const base = viewBase(layouts, run, frame, options)
  const { layout, broken } = base
  const sweep = sweepShown(frame)
  const first = firstColumn(layout, sweep.at)
  const half = dimensions.pitch * layout.perMm
  const columns = allColumns.flatMap((column) => {
    const x = columnX(layout, first, column)
    const isSeen = x > layout.left - half && x < rightOf(layout) + half
    return isSeen ? [columnOf(frame, column, x, broken)] : []
  })
  return {
    ...base,
    first,
    columns,
    sweep,
    focus: columnOf(frame, sweep.column, columnX(layout, first, sweep.column), broken),
  }
}
