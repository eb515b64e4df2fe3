import { columnsOfStrip } from '../../mechanism/bed.ts'
import { isStripFault, type StripFault } from '../../mechanism/fault.ts'
import { allStrips, measureOfStrip, type Strip, toStrip } from '../../mechanism/indices.ts'
import { sweepShown } from '../../words/figures/sweep.ts'
import { beltWords, stripState } from '../../words/figures/timing.ts'
import { millimetres } from '../../words/lists.ts'
import { drawBalloons } from '../shared/balloons.ts'
import { drawTexts, type Label } from '../shared/labels.ts'
import type { Group } from '../shared/svg.ts'
import { stripBase } from './layout.ts'
import type { TimingView } from './view.ts'

/** Left edge of the lanes' names, beside their balloons. */
const nameX = 27

const stripColumns = (strip: Strip): string => `columns ${columnsOfStrip(strip).join(', ')}`

const faultOf = (view: TimingView, strip: Strip): StripFault | undefined =>
  view.run.scenario.faults.filter(isStripFault).find(({ at: [its] }) => its === strip)

const stripLabels = (view: TimingView): Label[] =>
  allStrips.flatMap((strip): Label[] => {
    const y = stripBase(view.layout, strip)
    const fault = faultOf(view, strip)
    const isMoving = measureOfStrip(view.frame.stripShifts, strip) > 0
    const look = fault ? 'broken' : isMoving ? 'moving' : 'strong'
    if (view.layout.shape === 'narrow') return [{ text: String(strip), x: 4, y: y - 2, look }]
    return [
      { text: `strip ${strip}`, x: nameX, y: y - 12, look },
      fault
        ? { text: stripState(fault), x: nameX, y: y + 2, look: 'fault' }
        : { text: stripColumns(strip), x: nameX, y: y + 2 },
    ]
  })

const laneLabels = (view: TimingView): Label[] => {
  const { layout, frame } = view
  const { row } = frame.pass
  if (!layout.pushes || !layout.cams)
    return row === null ? [{ text: 'no card', x: layout.left, y: layout.card + 4, look: 'strong' }] : []
  const belt = beltWords(frame)
  return [
    { text: 'card, repeated', x: nameX, y: layout.card - 3, look: 'strong' },
    { text: row === null ? 'no card' : `row ${row} is read`, x: nameX, y: layout.card + 11 },
    { text: 'pins pushed', x: nameX, y: layout.pushes.base - 12, look: 'strong' },
    {
      text: belt ?? 'all 24 columns',
      x: nameX,
      y: layout.pushes.base + 2,
      look: belt === null ? '' : 'fault',
    },
    { text: 'needles', x: nameX, y: layout.bed - 12, look: 'strong' },
    { text: 'as they come out', x: nameX, y: layout.bed + 2 },
    { text: 'carriage', x: nameX, y: layout.cams.top + 9, look: 'strong' },
    {
      text: frame.pass.way === 1 ? 'moving right →' : '← moving left',
      x: nameX,
      y: layout.cams.top + 23,
    },
  ]
}

/** What each strip, and the pin under the sweep, is at now: in the margin beyond the lanes. */
const readouts = (view: TimingView): Label[] => {
  const { layout, frame } = view
  if (layout.pushes === null) return []
  const x = layout.left + (layout.needles - 0.5) * layout.pitch + 6
  const { base } = layout.pushes
  const sweep = sweepShown(frame)
  const reach = stripBase(layout, toStrip(1)) - frame.condition.reach * layout.perMm
  return [
    { text: sweep.isClear ? 'sweep' : 'sweep at', x, y: base - 16 },
    { text: sweep.isClear ? 'stands still' : `column ${sweep.column}`, x, y: base - 3, look: 'strong' },
    { text: 'reach', x, y: reach - 11 },
    { text: millimetres(frame.condition.reach), x, y: reach + 2 },
    ...allStrips.map((strip): Label => {
      const shift = measureOfStrip(frame.stripShifts, strip)
      return {
        text: shift > 0 ? millimetres(shift) : '',
        x,
        y: stripBase(layout, strip) + 4,
        look: 'moving',
      }
    }),
  ]
}

/** Names of the lanes, the strips' readouts and the balloons. */
export const drawLabels = (root: Group, view: TimingView): void => {
  const { layout } = view
  drawTexts(root, 'lane-names', [...laneLabels(view), ...stripLabels(view)])
  drawTexts(root, 'readouts', readouts(view))
  const { pushes, cams } = layout
  drawBalloons(
    root,
    pushes && cams
      ? [
          { number: 1, x: 11, y: layout.card },
          { number: 2, x: 11, y: pushes.base - 11 },
          { number: 5, x: 11, y: stripBase(layout, toStrip(1)) - 11 },
          { number: 9, x: 11, y: layout.bed - 11 },
        ]
      : [],
  )
}
