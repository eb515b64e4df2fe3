import { hatch } from '../shared/definitions.ts'
import { drawTexts } from '../shared/labels.ts'
import { drawGroup, drawShapes, type Group } from '../shared/svg.ts'
import type { MarginsLayout } from './layout.ts'

const samples = [
  { state: 'works', text: 'left now' },
  { state: 'works least', text: 'least of all' },
  { state: 'fails', text: 'short by as much' },
  { state: 'new', text: 'left in a new machine' },
] as const

/** What the bars' looks stand for. */
export const drawLegend = (root: Group, layout: MarginsLayout, prefix: string): void => {
  const band = drawGroup(root, 'legend')
  const { x } = layout.curve
  const lines = layout.shape === 'wide' ? samples : []
  drawShapes(drawGroup(band, 'samples'), 'path', 'sample', lines, ({ state }, n) => {
    const tall = state === 'new' ? 6 : 14
    return {
      class: `sample ${state === 'new' ? 'as-new' : 'present'}`,
      'data-state': state,
      fill: state === 'fails' ? hatch(prefix, 'broken') : '',
      d: `M${x},${layout.legend + n * 25 - tall / 2}h30v${tall}h-30Z`,
    }
  })
  drawTexts(
    band,
    'sample-names',
    lines.map(({ text }, n) => ({ text, x: x + 40, y: layout.legend + n * 25 + 4.5 })),
  )
}
