import { curveMonotoneX, line } from 'd3'
import { faultId } from '../../mechanism/fault.ts'
import type { Frame } from '../../mechanism/frame.ts'
import { chanceOfSelection } from '../../mechanism/chance.ts'
import { type Run, startRun } from '../../mechanism/pass.ts'
import { isChanceWhole } from '../../mechanism/trials.ts'
import { withUnit } from '../../words/lists.ts'
import { percent } from '../../words/figures/margins.ts'
import { drawTexts, type Label } from '../shared/labels.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, type Group, write } from '../shared/svg.ts'
import type { MarginsLayout } from './layout.ts'

/** Wear at which the curve is computed: nothing happens below the middle, and much above it. */
const wears = [0, 0.25, 0.4, 0.5, 0.57, 0.64, 0.71, 0.78, 0.85, 0.92, 1]

/** What the curve depends on, besides wear. */
const curveKey = (run: Run, way: number): string =>
  [way, run.scenario.speed, ...run.scenario.faults.map(faultId)].join(' ')

const place = (layout: MarginsLayout, wear: number, chance: number): [number, number] => {
  const { x, y, width, height } = layout.curve
  return [x + wear * width, y + (1 - chance) * height]
}

const curvePath = (layout: MarginsLayout, run: Run, way: 1 | -1): string => {
  const points = wears.map((wear): [number, number] => {
    const [x, y] = place(layout, wear, chanceOfSelection(startRun({ ...run.scenario, wear }), way))
    return [px(x), px(y)]
  })
  return line().curve(curveMonotoneX).digits(1)(points) ?? ''
}

/** The curve, computed again only where the machine differs by more than its wear. */
const drawCurve = (band: Group, layout: MarginsLayout, run: Run, way: 1 | -1): void => {
  const key = curveKey(run, way)
  const curve = drawShape(band, 'path', 'curve', {})
  if (curve.attr('data-of') === key) return
  write(curve, () => ({ 'data-of': key, d: curvePath(layout, run, way) }))
}

/** Labels round the curve. */
const labelsOf = (layout: MarginsLayout, chance: number, isWhole: boolean): Label[] => {
  const { x, y, width, height } = layout.curve
  const ends = [
    { text: 'as new', x, y: y + height + 15, look: 'start' },
    { text: 'worn out', x: x + width, y: y + height + 15, look: 'end' },
  ]
  if (layout.shape === 'narrow')
    return [
      { text: percent(chance), x: 3, y: y + 19, look: 'strong start' },
      { text: 'of needles whose pin is', x: 3, y: y + 33, look: 'start' },
      { text: 'through a hole are selected', x: 3, y: y + 48, look: 'start' },
      ...(isWhole ? [] : [{ text: '(single faults left aside)', x: 3, y: y + 62, look: 'start' }]),
      ...ends,
    ]
  return [
    { text: percent(chance), x, y: y - 104, look: 'large start' },
    { text: 'of needles whose pin is', x, y: y - 78, look: 'start' },
    { text: 'through a hole are selected,', x, y: y - 60, look: 'start' },
    { text: 'in machines of this wear', x, y: y - 42, look: 'start' },
    ...(isWhole ? [] : [{ text: '(single faults left aside)', x, y: y - 22, look: 'start' }]),
    { text: withUnit(100, '%'), x: x - 9, y: y + 4, look: 'end' },
    { text: '50', x: x - 9, y: y + height / 2 + 4, look: 'end' },
    { text: '0', x: x - 9, y: y + height + 4, look: 'end' },
    ...ends,
    { text: 'wear', x: x + width / 2, y: y + height + 15, look: 'middle' },
  ]
}

/** The chance that a needle under a hole is selected: its number, and its curve over wear with the present wear. */
export const drawChance = (root: Group, layout: MarginsLayout, run: Run, frame: Frame): void => {
  const band = drawGroup(root, 'chance')
  const { way } = frame.pass
  const { wear } = run.scenario
  const { x, y, width, height } = layout.curve
  const chance = chanceOfSelection(run, way)
  const half = px(y + height / 2)
  drawShape(band, 'path', 'curve-lines', { d: `M${x},${y}h${width}M${x},${half}h${width}` })
  drawShape(band, 'path', 'curve-axes', { d: `M${x},${y - 6}V${y + height}H${x + width + 6}` })
  drawCurve(band, layout, run, way)
  const [nowX, nowY] = place(layout, wear, chance)
  drawShape(band, 'path', 'wear-line', { d: `M${px(nowX)},${y + height}V${px(nowY)}` })
  drawShape(band, 'circle', 'wear-mark', { cx: px(nowX), cy: px(nowY), r: layout.shape === 'wide' ? 5 : 4 })
  drawTexts(band, 'chance-labels', labelsOf(layout, chance, isChanceWhole(run)))
}
