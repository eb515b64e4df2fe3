import { cams, gate2Start } from '../../mechanism/dimensions.ts'
import { gapWords } from '../../words/figures/gates.ts'
import { millimetres } from '../../words/lists.ts'
import { camMiddle, camSpansOf } from '../shared/cams.ts'
import type { Label } from '../shared/labels.ts'
import type { Line } from '../shared/linework.ts'
import { dimensionLine, polyline, px } from '../shared/paths.ts'
import { levelY } from './layout.ts'
import type { GatesView } from './view.ts'

/** Where the upright dimensions are on the axis: before each gate's face, and before the presser's ramp. */
const marginAt = ({ frame }: GatesView): number => frame.condition.dimensions.gateLag - 0.16
const dipAt = -(cams.presserFlat + cams.presserRamp) - 0.5
const underAt = ({ frame }: GatesView): number => camMiddle(frame.condition.dimensions, 'gate.1')
const secondAt = ({ frame }: GatesView): number => gate2Start(frame.condition.dimensions) - 0.25

/** Lines that carry the cams' ends from the view from above down to the view from the side. */
export const projections = ({ layout, x, frame }: GatesView): Line[] => {
  if (layout.shape === 'narrow') return []
  const ends = Object.values(camSpansOf(frame.condition.dimensions)).flat()
  const top = layout.line + layout.half + 4
  return [{ look: 'projection', d: ends.map((end) => `M${px(x(end))},${top}V${layout.camTop}`).join('') }]
}

/** The dimension lines: dip, the margins at both gates, and the way between presser and first gate. */
export const dimensionLines = (view: GatesView): Line[] => {
  const { layout, sorting, x } = view
  if (layout.shape === 'narrow' || sorting.isAside) return []
  const { dip, gate1, free, held, canHold } = sorting
  const y = (height: number): number => levelY(layout, height)
  const upright = (behind: number, from: number, to: number): string =>
    dimensionLine(x(behind), y(from), x(behind), y(to))
  const over = layout.camTop + 14
  return [
    {
      look: 'extension',
      d: polyline([
        [x(-cams.presserFlat), y(-dip)],
        [x(dipAt - 0.12), y(-dip)],
      ]),
    },
    { look: 'dimension', d: upright(dipAt, 0, -dip) },
    {
      look: 'extension',
      d: polyline([
        [x(view.frame.condition.dimensions.gateLag), y(-gate1)],
        [x(marginAt(view) - 0.12), y(-gate1)],
      ]),
    },
    {
      look: `dimension${free.height > -gate1 ? '' : ' wrong'}`,
      d: upright(marginAt(view), free.height, -gate1),
    },
    {
      look: `dimension held${held.height < -gate1 ? '' : ' wrong'}`,
      d: canHold ? upright(underAt(view), held.height, -gate1) : '',
    },
    {
      look: 'dimension held',
      d:
        canHold && held.outcome === 'selected'
          ? upright(secondAt(view), held.height, -view.frame.condition.dimensions.gate2)
          : '',
    },
    {
      look: 'extension',
      d:
        canHold && held.outcome === 'selected'
          ? polyline([
              [x(secondAt(view)), y(-view.frame.condition.dimensions.gate2)],
              [x(secondAt(view)), layout.bedFoot + 4],
            ])
          : '',
    },
    {
      look: 'extension',
      d: polyline([
        [x(0), over - 6],
        [x(0), over + 6],
      ]),
    },
    { look: 'dimension', d: dimensionLine(x(0), over, x(view.frame.condition.dimensions.gateLag), over) },
  ]
}

/** What each upright dimension measures, written beside it. */
export const dimensionLabels = (view: GatesView): Label[] => {
  const { layout, sorting, x, way } = view
  const { dip, gate1, free, held, canHold } = sorting
  if (sorting.isAside) return []
  const y = (height: number): number => levelY(layout, height)
  const toPresser = way === 1 ? '' : 'end '
  const side = way * 7
  const isHeldClear = held.height < -gate1
  const margin = (mm: number): string => (mm < 0 ? `−${millimetres(-mm)}` : millimetres(mm))
  return [
    { look: `over ${toPresser}`, x: x(dipAt) + side, y: layout.rest - 8, text: `dip ${millimetres(dip)}` },
    {
      look: `over ${toPresser}${free.height > -gate1 ? '' : 'wrong'}`,
      x: x(marginAt(view)) + side,
      y: (y(free.height) + y(-gate1)) / 2 + 4,
      text: margin(free.height + gate1),
    },
    {
      look: `over ${isHeldClear ? `${toPresser}selected` : `${toPresser === '' ? 'end ' : ''}wrong`}`,
      x: x(underAt(view)) + (isHeldClear ? side : -side),
      y: (y(held.height) + y(-gate1)) / 2 + 4,
      text: canHold ? margin(-gate1 - held.height) : '',
    },
    {
      look: 'middle selected',
      x: x(secondAt(view)),
      y: layout.bedFoot + 16,
      text:
        canHold && held.outcome === 'selected'
          ? margin(view.frame.condition.dimensions.gate2 + held.height)
          : '',
    },
    {
      look: 'middle',
      x: x(view.frame.condition.dimensions.gateLag / 2),
      y: layout.camTop + 8,
      text: gapWords(sorting),
    },
  ]
}
