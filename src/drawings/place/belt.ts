import { at as entryAt, lastOf } from '../../mechanism/lookup.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { sweepShown } from '../../words/figures/sweep.ts'
import { drawGroup, drawShape, type Group } from '../shared/svg.ts'
import { wedgeFlank } from '../shared/wedge.ts'
import { drawBox } from './bed.ts'
import { along, beltHigh, bodyLength, columnAlong, levelHigh, type PlaceLayout, readerMm } from './layout.ts'
import { edge, face, type Point } from './projection.ts'
import { brokenMark, drawPressArea, type PlaceView } from './view.ts'

/** Depths of the belt's two runs: over the pins, and behind the card. */
const runs = (layout: PlaceLayout): readonly [number, number] => [
  layout.reader.pins,
  layout.reader.pins + 4.3 * layout.card.bend,
]

/** Where along the bed the belt's pulleys turn. */
const pulleys = (layout: PlaceLayout): readonly [number, number] => [
  along(layout, layout.first - layout.beyond * 0.6),
  bodyLength(layout) - along(layout, layout.first - layout.beyond * 0.6),
]

/** An arc round a pulley, from one angle to another; 0 points along the bed, a quarter away from the viewer. */
const arc = (view: PlaceView, x: number, share: number, from: number, to: number): string => {
  const { layout } = view
  const [near, far] = runs(layout)
  const radius = (share * (far - near)) / 2
  const steps = 18
  const points = Array.from({ length: steps + 1 }, (_, n): Point => {
    const angle = from + ((to - from) * n) / steps
    return [x + radius * Math.cos(angle), (near + far) / 2 + radius * Math.sin(angle), beltHigh(layout)]
  })
  return edge(layout, ...points)
}

/** The posts with their pulleys, and the belt's far run, behind the card. */
export const drawBeltBehind = (root: Group, view: PlaceView): void => {
  const { layout } = view
  const group = drawGroup(root, 'belt-behind', { 'data-part': 'belt' })
  const [near, far] = runs(layout)
  const [left, right] = pulleys(layout)
  const half = layout.deckHigh * 0.6
  const middle = (near + far) / 2
  for (const [n, x] of [left, right].entries())
    drawBox(group, view, `post-${n}`, {
      from: [x - half, middle - half, layout.deckHigh],
      to: [x + half, middle + half, beltHigh(layout) - 2],
    })
  const turn = Math.PI / 2
  drawShape(group, 'path', 'pulleys', {
    d: [left, right].map((x) => `${arc(view, x, 0.8, 0, 4 * turn)}Z`).join(''),
  })
  drawShape(group, 'path', 'belt-run', {
    d:
      edge(layout, [left, far, beltHigh(layout)], [right, far, beltHigh(layout)]) +
      arc(view, left, 1, turn, 3 * turn) +
      arc(view, right, 1, -turn, turn),
  })
}

/** Middle of the sweep, and the middles of those that the belt carries before and after it, in columns. */
export const sweepsAt = (view: PlaceView): number[] => {
  const { at } = sweepShown(view.frame)
  return [at - dimensions.columns, at, at + dimensions.columns].filter(
    (middle) => middle > -1 && middle < dimensions.columns + 2,
  )
}

/** How far above its place the sweep is drawn that stands clear of the pins, in mm. */
const clearBy = 1.1

/** Lower edge of the sweep in the picture. */
export const sweepHigh = (view: PlaceView): number => {
  const { condition } = view.frame
  return levelHigh(view.layout, condition.sweepEdge + (condition.beltOff ? clearBy : 0))
}

/** The wedge of the sweep: its flank, which pushes the front legs, and its upper side. Its depth is drawn larger. */
const wedge = (view: PlaceView, at: number): string => {
  const { layout, frame } = view
  const mm = readerMm(layout)
  const low = sweepHigh(view)
  const high = Math.max(low + 2, beltHigh(layout) + (frame.condition.beltOff ? clearBy * layout.moved : 0))
  const back = layout.reader.pins + 1.2 * layout.moved
  const flank = wedgeFlank(0)
    .filter((_, n) => n % 4 === 0)
    .map(({ right, front }): [number, number] => [
      columnAlong(layout, at) + right * mm,
      layout.reader.pins - front * layout.moved * 0.5,
    ])
  const ends: [number, number] = [entryAt(flank, 0)[0], lastOf(flank)[0]]
  const edgeAt = (z: number): Point[] => flank.map(([x, y]): Point => [x, y, z])
  const top = face(layout, ...edgeAt(high), [ends[1], back, high], [ends[0], back, high])
  return top + face(layout, ...edgeAt(low), ...edgeAt(high).reverse())
}

/** The belt's near run over the pins' front legs, with the sweep that it carries. */
export const drawBelt = (root: Group, view: PlaceView): void => {
  const { layout } = view
  const [left, right] = pulleys(layout)
  const [near] = runs(layout)
  const high = beltHigh(layout)
  const belt = drawGroup(root, 'belt-near', { 'data-part': 'belt' })
  const run = edge(layout, [left, near, high], [right, near, high])
  drawPressArea(belt, run, 'line')
  drawShape(belt, 'path', 'belt-run', { d: run, 'data-broken': brokenMark(view, 'belt') })
  const sweep = drawGroup(root, 'sweep-near', { 'data-part': 'sweep' })
  const teeth = sweepsAt(view)
    .map((at) => wedge(view, at))
    .join('')
  drawPressArea(sweep, teeth, 'line')
  drawShape(sweep, 'path', 'sweep-tooth', {
    d: teeth,
    'data-look': view.frame.condition.beltOff ? 'clear' : '',
    'data-broken': brokenMark(view, 'sweep') || brokenMark(view, 'belt'),
  })
}

/** The arm by which the carriage pulls the belt along; where the belt is not engaged it ends short of it. */
export const drawArm = (root: Group, view: PlaceView): void => {
  const { layout, frame } = view
  const x = along(layout, frame.x)
  const [near] = runs(layout)
  const { back, high } = layout.carriage
  const isOff = frame.condition.beltOff
  const reach = isOff ? back + (near - back) * 0.55 : near
  drawShape(root, 'path', 'belt-arm', {
    d: edge(layout, [x, back, high], [x, back, beltHigh(layout)], [x, reach, beltHigh(layout)]),
    'data-broken': isOff ? 'broken' : '',
  })
}
