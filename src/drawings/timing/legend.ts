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
  { name: 'happened', look: 'happened', shape: rise, x: 2 },
  { name: 'to come', look: 'to-come', shape: rise, x: 93 },
  { name: 'missing', look: 'missing', shape: rise.slice(0, -1), x: 177 },
  { name: 'not asked for', look: 'unasked', shape: rise, x: 261 },
  { name: 'far enough', look: 'dot reached', shape: ring(10, 7, 3.1), x: 389 },
  { name: 'too little', look: 'dot short', shape: ring(10, 7, 3.1), x: 495 },
  { name: 'presser to gate', look: 'hold-span', shape: 'M2,12v-11M2,7h16m0,-4v8', x: 601 },
  { name: 'catches let go', look: 'falls', shape: 'M6.6,3.6h6.8l-3.4,6.8Z', x: 743 },
  { name: 'not as asked', look: 'dot wrong', shape: cross, x: 878 },
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
