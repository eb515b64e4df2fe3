import { type BedSeen, drawBed } from '../drawings/bed/bed.ts'
import { edges, layouts, needlePosition, travels } from '../drawings/bed/layout.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import type { Pass } from '../mechanism/pass.ts'
import { toBed } from '../mechanism/bed.ts'
import { describeBed } from '../words/figures/bed.ts'
import type { Shape } from '../drawings/shared/figure-contract.ts'
import { drawnMarkup } from './drawn-markup.ts'
import { minified } from './minify-svg.ts'

/** The drawing of a bed as markup, for the page as it is built. */
export const bedMarkup = (bed: BedSeen, shape: Shape): string =>
  minified(
    drawnMarkup((svg) => {
      drawBed(svg, bed, { shape })
    }),
  )

/** So many needles on each side of the middle: a strip's come up four times, a column's twice. */
const half = 16

/** The middle of the bed after a pass, as a picture without names that keeps clear of its other lines. */
export const bedStrip = (pass: Pass): { viewBox: string; drawing: string; words: string } => {
  const layout = layouts.narrow
  const bed = { first: dimensions.needles / 2 - half, last: dimensions.needles / 2 + half - 1 }
  const from = needlePosition(layout, bed.first)
  const room = layout.sign + 1
  const top = from.y + edges(layout).back - 1
  const bottom = from.y + travels(layout).selected + room
  const left = from.x - layout.pitch / 2
  const viewBox = [left, top, 2 * half * layout.pitch + 1, bottom - top]
    .map((value) => value.toFixed(1))
    .join(' ')
  return {
    viewBox,
    drawing: bedMarkup({ came: pass.came, asked: pass.asked, ...bed }, 'narrow'),
    words: describeBed(pass, toBed(bed)),
  }
}
