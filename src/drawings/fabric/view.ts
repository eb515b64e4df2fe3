import { floatLimit } from '../../mechanism/fabric.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Needle } from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import type { FigureOptions } from '../shared/figure-contract.ts'
import { type FigureView, needlesInSight, viewBase } from '../shared/view.ts'
import { type FabricLayout, layouts, windowFrom } from './layout.ts'

/** What the figure's bands need: the state, and which needles and passes are in the window. */
export interface FabricView extends FigureView<FabricLayout> {
  /** First needle of the window, with a fraction. */
  readonly from: number
  /** Needles in the window, from the left; only those that the bed has. */
  readonly indexes: readonly Needle[]
  /** Passes whose rows of fabric are shown, the newest first; those before pass 1 knitted plain, as one begins. */
  readonly passes: readonly number[]
  /** The most stitches that a float may pass behind unmarked. */
  readonly floatLimit: number
}

export const viewOf = (run: Run, frame: Frame, options: FigureOptions): FabricView => {
  const layout = layouts[options.shape]
  const from = options.from ?? windowFrom(layout, run.condition.bed, frame.x)
  const newest = frame.pass.pass
  const base = viewBase(layouts, run, frame, options)
  return {
    ...base,
    from,
    indexes: needlesInSight(base.whole, Math.floor(from), Math.ceil(from + layout.needles - 1)),
    passes: Array.from({ length: layout.rows }, (_, n) => newest - n),
    floatLimit: options.floatLimit ?? floatLimit,
  }
}

/** How many needles the cloth's window moves on by at a time: its stitches are drawn again only then. */
const stride = 24

/** The same state for the cloth, whose window begins at a needle that stays for a while. */
export const clothView = (view: FabricView): FabricView => {
  const from = Math.floor(view.from / stride) * stride
  return { ...view, from, indexes: needlesInSight(view.whole, from, from + stride + view.layout.needles) }
}

/** How far the cloth is to be moved within the band, for the needles by which its window begins earlier. */
export const clothX = (view: FabricView, cloth: FabricView): number =>
  (cloth.from - Math.floor(view.from)) * view.layout.stitch.width

/** Left edge of a needle's stitch, with the window at a whole needle. */
export const stitchX = (view: FabricView, index: number): number =>
  view.layout.left + (index - Math.floor(view.from)) * view.layout.stitch.width

/** How far all that is drawn with the needles slides for the fraction of a needle at which the window begins. */
export const slideX = (view: FabricView): number =>
  (Math.floor(view.from) - view.from) * view.layout.stitch.width

/** Middle of a needle. */
export const needleX = (view: FabricView, index: number): number =>
  stitchX(view, index) + view.layout.stitch.width / 2
