import { lastOf } from '../../mechanism/lookup.ts'
import { hatch } from '../shared/definitions.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import { barY } from './bars.ts'
import { lengthX, type MarginsLayout } from './layout.ts'
import { withUnit } from '../../words/lists.ts'

/** Top and bottom of the upright lines: whole where the names stand aside, in pieces where they are between. */
const pieces = (layout: MarginsLayout, count: number): [number, number][] =>
  layout.shape === 'wide'
    ? [[barY(layout, -0.43), barY(layout, count - 0.57)]]
    : Array.from({ length: count }, (_, n) => [
        barY(layout, n) - layout.half - 2,
        barY(layout, n) + layout.asNew[1] + 2,
      ])

/** Places of the scale in mm, every half millimetre. */
const stepsOf = (layout: MarginsLayout): number[] => {
  const first = Math.ceil(layout.least * 2)
  const last = Math.floor(layout.most * 2)
  return Array.from({ length: last - first + 1 }, (_, n) => (first + n) / 2)
}

/** The scale: the line at which a stage fails, hatched on its far side, and a thin line at every half millimetre. */
export const drawScale = (root: Group, layout: MarginsLayout, count: number, prefix: string): void => {
  const band = drawGroup(root, 'scale')
  const all = pieces(layout, count)
  const isWide = layout.shape === 'wide'
  const upright = (x: number): string =>
    all.map(([top, bottom]) => `M${px(x)},${px(top)}V${px(bottom)}`).join('')
  const steps = stepsOf(layout)
  const others = steps.filter((mm) => mm !== 0).map((mm) => upright(lengthX(layout, mm)))
  const between = Array.from(
    { length: isWide ? count - 1 : 0 },
    (_, n) => `M0,${px(barY(layout, n + 0.5))}H${layout.lengths}`,
  )
  drawShape(band, 'path', 'scale-lines', { d: [...others, ...between].join('') })
  const side = isWide ? 8 : 5
  drawShape(band, 'path', 'failing-side', {
    d: all.map(([top, bottom]) => `M${layout.zero},${px(top)}V${px(bottom)}h${-side}V${px(top)}Z`).join(''),
    fill: hatch(prefix, 'cut'),
  })
  drawShape(band, 'path', 'failing-line', { d: upright(layout.zero) })
  drawShapes(drawGroup(band, 'scale-names'), 'text', 'scale-name', steps, (mm) => ({
    x: px(lengthX(layout, mm)),
    y: px(lastOf(all)[1] + 14),
    text: mm === 0 ? '0' : withUnit(mm, 'mm').replace('-', '−'),
  }))
}
