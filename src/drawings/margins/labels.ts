import type { Frame } from '../../mechanism/frame.ts'
import { leastMargin, type Margin } from '../../mechanism/margins.ts'
import type { Run } from '../../mechanism/pass.ts'
import { marginLength, marginWords, running } from '../../words/figures/margins.ts'
import { drawBalloons } from '../shared/balloons.ts'
import { drawTexts, type Label } from '../shared/labels.ts'
import { drawGroup, type Group } from '../shared/svg.ts'
import { barY } from './bars.ts'
import { lengthX, type MarginsLayout } from './layout.ts'

/** The word beside the least margin, and beside those that fail. */
const verdictOf = (layout: MarginsLayout, margin: Margin, least: Margin, y: number): Label[] => {
  const words = [...(margin.mm <= 0 ? ['fails'] : []), ...(margin === least ? ['least'] : [])]
  const x = margin.mm <= 0 ? layout.zero + 7 : lengthX(layout, margin.mm) + 7
  const look = margin.mm <= 0 ? 'fails' : 'strong'
  return words.length === 0 ? [] : [{ text: words.join(', '), x, y: y + 4.5, look }]
}

const wideLabels = (layout: MarginsLayout, margin: Margin, n: number): Label[] => {
  const { stage, name, means } = marginWords[margin.id]
  const y = barY(layout, n)
  return [
    { text: `${stage}: ${name}`, x: 27, y: y - 1, look: 'strong' },
    { text: means, x: 27, y: y + 14 },
  ]
}

const narrowLabels = (layout: MarginsLayout, margin: Margin, n: number): Label[] => {
  const { stage, name } = marginWords[margin.id]
  return [{ text: `${stage}: ${name}`, x: 3, y: barY(layout, n) - 8 }]
}

/** The names of the margins, their lengths in figures, and which is the least and which fail. */
export const drawLabels = (
  root: Group,
  layout: MarginsLayout,
  run: Run,
  frame: Frame,
  all: readonly Margin[],
): void => {
  const band = drawGroup(root, 'label-band')
  const isWide = layout.shape === 'wide'
  const least = leastMargin(all)
  const heading = isWide
    ? [
        { text: 'fails', x: layout.zero - 10, y: 24, look: 'strong end' },
        { text: 'works', x: layout.zero + 8, y: 24, look: 'strong' },
        { text: running(run, frame), x: layout.lengths, y: 24, look: 'end' },
      ]
    : [{ text: `What is left, ${running(run, frame)}`, x: 3, y: 12, look: 'strong' }]
  drawTexts(band, 'headings', heading)
  drawTexts(
    band,
    'names',
    all.flatMap((margin, n) => (isWide ? wideLabels : narrowLabels)(layout, margin, n)),
  )
  drawTexts(
    band,
    'lengths',
    all.map((margin, n) => ({
      text: marginLength(margin),
      x: layout.lengths,
      y: barY(layout, n) + (isWide ? 4.5 : -8),
      look: margin.mm <= 0 ? 'fails end' : 'strong end',
    })),
  )
  drawTexts(
    band,
    'verdicts',
    isWide ? all.flatMap((margin, n) => verdictOf(layout, margin, least, barY(layout, n))) : [],
  )
  drawBalloons(
    band,
    isWide ? all.map(({ id }, n) => ({ number: marginWords[id].part, x: 11, y: barY(layout, n) })) : [],
  )
}
