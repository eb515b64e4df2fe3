import { select } from 'd3'
import { passEnds } from '../../mechanism/bed.ts'
import { frameAt } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { type Sample, windowOf } from '../../mechanism/sample.ts'
import { drawDefinitions } from '../fabric/definitions.ts'
import { type FabricLayout, layouts } from '../fabric/layout.ts'
import { drawFabric, rowsOf } from '../fabric/stitches.ts'
import type { FabricView } from '../fabric/view.ts'
import type { Shape } from '../shared/figure-contract.ts'
import { drawGroup, setSize } from '../shared/svg.ts'
import { needlesInSight, viewBase } from '../shared/view.ts'

/** How many needles a swatch shows at most, and the size of a stitch in the picture's pixels. */
const sizes: Readonly<
  Record<Shape, { readonly needles: number; readonly width: number; readonly height: number }>
> = {
  wide: { needles: 48, width: 11, height: 9 },
  narrow: { needles: 32, width: 10, height: 8.4 },
}

/** The stitches at the edges are outlined too, so their outline needs room. */
const margin = 2

/** Which needles and passes a swatch shows. */
export interface SwatchView {
  readonly first: number
  readonly last: number
}

const layoutOf = (sample: Sample, shape: Shape): FabricLayout => {
  const { needles, width, height } = sizes[shape]
  const shown = Math.min(needles, sample.bed.last - sample.bed.first + 1)
  return {
    ...layouts[shape],
    left: margin,
    needles: shown,
    rows: sample.rows.length,
    stitch: { width, height },
    width: shown * width + 2 * margin,
    height: (sample.rows.length + 0.3) * height + 2 * margin,
  }
}

/** First and last needle that a sample's swatches show in this shape. */
export const swatchNeedles = (sample: Sample, shape: Shape): SwatchView => {
  const first = windowOf(sample, sizes[shape].needles)
  return { first, last: first + layoutOf(sample, shape).needles - 1 }
}

/**
 * Draws a sample of fabric from its knit side, as it comes out or as the card asks for it, with whole rows only, the
 * first at the bottom. Stitches that are not the ones asked for are outlined and hatched. Keeps nothing between calls.
 */
export const drawSwatch = (
  svg: SVGSVGElement,
  run: Run,
  sample: Sample,
  { cloth, shape, prefix }: { cloth: 'knitted' | 'asked'; shape: Shape; prefix: string },
): void => {
  const layout = layoutOf(sample, shape)
  const { first, last } = swatchNeedles(sample, shape)
  const rows = sample.rows.toReversed()
  const newest = rows[0]?.pass ?? 1
  // At the end of its pass, so that the newest row is knitted too.
  const frame = frameAt(run, newest, passEnds(newest, sample.bed).end)
  const base = viewBase({ wide: layout, narrow: layout }, run, frame, { shape, prefix })
  const view: FabricView = {
    ...base,
    from: first,
    indexes: needlesInSight(base.whole, first, last),
    passes: rows.map(({ pass }) => pass),
    // A customer's eye is for the face of the fabric; what lies behind it is left out.
    floatLimit: Infinity,
  }
  setSize(svg, layout)
  svg.setAttribute('preserveAspectRatio', 'xMinYMid')
  const root = drawGroup(select<SVGGElement, null>(svg), 'fabric')
  drawDefinitions(root, view)
  drawFabric(
    drawGroup(root, `cloth ${cloth}`),
    view,
    rowsOf(
      view,
      margin,
      rows.map((row) => row[cloth]),
      rows.map(({ asked }) => asked),
    ),
  )
}
