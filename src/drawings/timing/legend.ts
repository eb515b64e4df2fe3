import { hatch } from '../shared/definitions.ts'
import { drawTexts } from '../shared/labels.ts'
import { ring } from '../shared/paths.ts'
import { drawGroup, drawShapes, type Group } from '../shared/svg.ts'
import type { TimingView } from './view.ts'

/** A small rise, as the curves have them, standing on the line of the words. */
const rise = 'M0,12C6,12 6,2 10,2S14,12 20,12Z'
const cross = 'M6,3.5l7,7M6,10.5l7,-7'

/** A mark of the chart, and where its name begins, in pixels from the left. */
const legend = [
  { name: 'has happened', look: 'happened', shape: rise, x: 132 },
  { name: 'to come', look: 'to-come', shape: rise, x: 240 },
  { name: 'should have been', look: 'missing', shape: rise.slice(0, -1), x: 318 },
  { name: 'should not be', look: 'unasked', shape: rise, x: 447 },
  { name: 'far enough at let-go', look: 'dot reached', shape: ring(10, 7, 3.1), x: 560 },
  { name: 'not far enough', look: 'dot short', shape: ring(10, 7, 3.1), x: 706 },
  { name: 'not as asked', look: 'dot wrong', shape: cross, x: 822 },
] as const

/** What the chart's marks mean, in one line above it. */
export const drawLegend = (root: Group, view: TimingView): void => {
  const group = drawGroup(root, 'legend')
  const shown = view.layout.shape === 'wide' ? legend : []
  drawShapes(drawGroup(group, 'legend-marks'), 'path', 'legend-mark', shown, ({ look, shape, x }) => ({
    class: `legend-mark ${look}`,
    'data-verdict': look.split(' ')[1] ?? '',
    d: shape,
    transform: `translate(${x} 2)`,
    fill: look === 'unasked' ? hatch(view.prefix, 'broken') : '',
  }))
  drawTexts(
    group,
    'legend-names',
    shown.map(({ name, x }) => ({ text: name, x: x + 25, y: 14 })),
  )
}
