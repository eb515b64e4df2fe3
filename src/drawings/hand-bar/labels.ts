import { at } from '../../mechanism/lookup.ts'
import { paddingOf, paddings, paddingWords } from '../../words/figures/hand-bar.ts'
import { inLines, type Label, linesAt } from '../shared/labels.ts'
import type { FigureView } from '../shared/view.ts'
import type { HandBarLayout } from './layout.ts'

/** Every label of the figure. */
export const labelsOf = ({ layout, frame }: FigureView<HandBarLayout>): Label[] => {
  const { plan, sections, finger } = layout
  const isWide = layout.shape === 'wide'
  const top = isWide ? 22 : 13
  return [
    {
      look: 'title',
      x: 0,
      y: top,
      text: isWide ? 'From above: draw the bar out, along the bed' : 'From above: draw the bar out',
    },
    { look: '', x: 0, y: top + (isWide ? 20 : 16), text: 'Nothing opened; all needles pushed back.' },
    { look: 'strong', x: plan.end + plan.out + finger * 0.8, y: plan.bar - finger * 1.4, text: 'draw' },
    { look: '', x: plan.end + 4, y: plan.bottom + plan.half * 0.7, text: 'needles' },
    {
      look: 'middle over strong',
      x: (plan.left + plan.end) / 2 + plan.out / 2,
      y: plan.bar + 4.5,
      text: 'bar',
    },
    {
      look: 'title',
      x: 0,
      y: sections.top - 10,
      text: isWide
        ? 'In section, across a needle: the padding faces it'
        : 'In section: the padding faces the needle',
    },
    ...paddings.flatMap((padding, n) => {
      const isTired = padding === 'tired'
      const [what, means] = paddingWords[padding]
      const lines = [
        ...inLines(what, isWide ? 30 : 22).map((text) => ({ look: isTired ? 'wrong' : 'strong', text })),
        ...inLines(means, isWide ? 26 : 22).map((text) => ({ look: '', text })),
        { look: 'strong', text: paddingOf(frame.condition) === padding ? 'so it is here' : '' },
      ]
      const { x, y, step } = sections.words
      return linesAt([at(sections.lefts, n) + x, sections.top + y], step, lines)
    }),
  ]
}
