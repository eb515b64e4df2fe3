import { leastMargin, type Margin, margins } from '../../mechanism/margins.ts'
import { startRun } from '../../mechanism/pass.ts'
import { soundScenario } from '../../mechanism/scenario.ts'
import { hatch } from '../shared/definitions.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShapes, type Group } from '../shared/svg.ts'
import { lengthX, type MarginsLayout } from './layout.ts'

/** The margins of the machine as new at its ordinary speed, alike both ways. */
const asNew: readonly Margin[] = margins(startRun(soundScenario(null)), 1)

/** Middle height of a margin's bar. */
export const barY = (layout: MarginsLayout, n: number): number => layout.top + n * layout.pitch

/** A bar from the failing line to a length in mm; cut off with a break where it runs past the end of the scale. */
const bar = (layout: MarginsLayout, mm: number, top: number, bottom: number): string => {
  const x = lengthX(layout, mm)
  const [y0, y1] = [px(top), px(bottom)]
  if (mm >= layout.least && mm <= layout.most) return `M${layout.zero},${y0}H${px(x)}V${y1}H${layout.zero}Z`
  const tooth = (mm > 0 ? 1 : -1) * Math.min(5, (bottom - top) / 2)
  const third = (bottom - top) / 3
  return `M${layout.zero},${y0}H${px(x - tooth)}l${px(tooth)},${px(third)}l${px(-tooth)},${px(third)}L${px(x)},${y1}H${layout.zero}Z`
}

const stateOf = (margin: Margin, least: Margin): string =>
  `${margin.mm <= 0 ? 'fails' : 'works'}${margin === least ? ' least' : ''}`

/** A bar for each margin, with that of the new machine below it, from the line at which a stage fails. */
export const drawBars = (
  root: Group,
  layout: MarginsLayout,
  all: readonly Margin[],
  prefix: string,
): void => {
  const band = drawGroup(root, 'bars')
  const least = leastMargin(all)
  drawShapes(drawGroup(band, 'news'), 'path', 'as-new', asNew, ({ mm }, n) => {
    const [top, bottom] = layout.asNew
    return {
      d: bar(layout, mm, barY(layout, n) + top, barY(layout, n) + bottom),
    }
  })
  drawShapes(drawGroup(band, 'presents'), 'path', 'present', all, (margin, n) => ({
    d: bar(layout, margin.mm, barY(layout, n) - layout.half, barY(layout, n) + layout.half),
    'data-margin': margin.id,
    'data-state': stateOf(margin, least),
    fill: margin.mm <= 0 ? hatch(prefix, 'broken') : '',
  }))
}
