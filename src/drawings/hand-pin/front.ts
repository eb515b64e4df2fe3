import { rodFelt } from '../../mechanism/by-hand.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { markOfColumn, measureOfColumn } from '../../mechanism/indices.ts'
import { pinFelt } from '../../mechanism/by-hand.ts'
import { legShape, pivotAside, pivotDepth, rockerShape } from '../pins/shapes.ts'
import { fingerLines, handArrow } from '../shared/hand.ts'
import type { Line } from '../shared/linework.ts'
import { boxPath, polyline, px, ring } from '../shared/paths.ts'
import type { HandPinView } from './view.ts'

/** A shape that is drawn from its own middle, moved to a place. */
const movedTo = (line: Line, x: number, y: number): Line => ({ ...line, d: shifted(line.d, x, y) })

/** A path of absolute points and of arcs, moved; the shapes of pins and rockers are made of those. */
const shifted = (d: string, x: number, y: number): string =>
  d.replaceAll(/([MLVHA])([^MLVHAZ]*)/g, (_, command: string, numbers: string) => {
    const values = numbers.split(/[ ,]/).map(Number)
    if (command === 'V') return `V${px((values[0] ?? 0) + y)}`
    if (command === 'H') return `H${px((values[0] ?? 0) + x)}`
    const arc = command === 'A' ? values.slice(0, 5) : []
    const [right = 0, down = 0] = values.slice(arc.length)
    return `${command}${[...arc, px(right + x), px(down + y)].join(' ')}`
  })

/** How far from the middle of the leg the rod goes down, at rest, in pixels. */
const rodX = (view: HandPinView): number => {
  const { leg, perMm } = view.layout.front
  return leg + pivotAside(measureOfColumn(view.frame.condition.lost, view.column)) * perMm
}

/** The pin's front leg, pushed to the left by a finger; the rocker that it turns, its rod, and the strip that follows. */
export const frontLines = (view: HandPinView): Line[] => {
  const { layout, column } = view
  const { condition } = view.frame
  const { leg, left, right, datum, perMm, plate, strip } = layout.front
  const push = dimensions.sweepThrow
  const lost = measureOfColumn(condition.lost, column)
  const out = rodFelt(condition, column)
  const isDead = markOfColumn(condition.rockerDead, column) === 1
  const height = pinFelt(condition, column).before
  const isPinBroken = view.broken.has(`pin.${column}`)
  const isRockerBroken = view.broken.has(`rocker.${column}`)
  const thick = 0.4 * perMm
  const rod = rodX(view) + out * perMm
  const foot = datum + 3.95 * perMm
  const half = 0.32 * perMm
  const slot = (y: number, from: number, to: number): string =>
    boxPath(left, y, from, y + thick) + boxPath(to, y, right, y + thick)
  const strips = layout.finger * 0.55
  return [
    {
      look: 'hand-wall',
      d: slot(datum, leg - (push + 1.1) * perMm, leg + 1.1 * perMm),
      hatch: 'cut',
    },
    { look: 'hand-wall', d: slot(plate, rodX(view) - 0.6 * perMm, rodX(view) + 2.6 * perMm), hatch: 'cut' },
    movedTo({ look: 'hand-still', d: legShape(height, perMm) }, leg, datum),
    movedTo(
      {
        look: `hand-part felt${isPinBroken ? ' broken' : ''}`,
        d: legShape(height, perMm),
        part: `pin.${column}`,
      },
      leg - push * perMm,
      datum,
    ),
    movedTo(
      {
        look: `hand-part${isRockerBroken ? ' broken' : ''}`,
        d: rockerShape(lost, out, perMm, isDead),
        part: `rocker.${column}`,
        ...(isRockerBroken ? { hatch: 'broken' as const } : {}),
      },
      leg,
      datum,
    ),
    { look: 'hand-part', d: ring(rodX(view), datum + pivotDepth * perMm, 0.22 * perMm) },
    {
      look: `hand-line${isRockerBroken ? ' broken' : ''}`,
      d: polyline([
        [rod, foot],
        [rod, strip - half],
      ]),
    },
    {
      look: 'hand-part',
      d: boxPath(rod + 1.5, strip - half - perMm * 0.7, rod + perMm * 0.45, strip - half),
    },
    {
      look: 'hand-part felt',
      d: boxPath(left + out * perMm, strip - half, right + out * perMm, strip + half),
    },
    ...(out > 0
      ? [handArrow([right + out * perMm + 6, strip], [right + out * perMm + 6 + perMm * 2, strip], strips)]
      : []),
    ...fingerLines({
      tip: [leg - push * perMm + (dimensions.pin / 2) * perMm + 1, datum - (height - 0.9) * perMm],
      points: 180,
      half: layout.finger,
    }),
    handArrow(
      [leg + layout.finger * 4.6, datum - (height - 0.9) * perMm - layout.finger * 2.1],
      [leg + layout.finger * 1.2, datum - (height - 0.9) * perMm - layout.finger * 2.1],
      layout.finger * 0.7,
    ),
  ]
}
