import { drawTexts } from '../shared/drafting.ts'
import { change, type Group, part, parts } from '../shared/svg.ts'
import type { Layout } from './layout.ts'

const samples = [
  { state: 'works', text: 'left now' },
  { state: 'works least', text: 'least of all' },
  { state: 'fails', text: 'short by as much' },
  { state: 'new', text: 'left in a new machine' },
] as const

/** What the bars' looks stand for. */
export const drawLegend = (root: Group, layout: Layout, prefix: string): void => {
  const band = part(root, 'g', 'legend')
  const { x } = layout.curve
  const lines = layout.name === 'wide' ? samples : []
  const boxes = parts(part(band, 'g', 'samples'), 'path', 'sample', lines)
  change(boxes, 'class', ({ state }) => `sample ${state === 'new' ? 'as-new' : 'present'}`)
  change(boxes, 'data-state', ({ state }) => state)
  change(boxes, 'fill', ({ state }) => (state === 'fails' ? `url(#${prefix}-broken)` : ''))
  change(boxes, 'd', ({ state }, n) => {
    const tall = state === 'new' ? 6 : 14
    return `M${x},${layout.legend + n * 25 - tall / 2}h30v${tall}h-30Z`
  })
  drawTexts(
    band,
    'sample-names',
    lines.map(({ text }, n) => ({ text, x: x + 40, y: layout.legend + n * 25 + 4.5 })),
  )
}
