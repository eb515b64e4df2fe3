import { at as entryAt } from '../../mechanism/lookup.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { toStrip, needleAtSlot } from '../../mechanism/indices.ts'
import { type Balloon, drawBalloons } from '../shared/balloons.ts'
import type { Shape } from '../shared/figure-contract.ts'
import { drawTexts, type Label } from '../shared/labels.ts'
import type { PicturePoint } from '../shared/paths.ts'
import { drawGroup, type Group, write } from '../shared/svg.ts'
import { sweepHigh, sweepsAt } from './belt.ts'
import { cardEdges, onCard } from './card.ts'
import { camPoints } from './carriage.ts'
import { along, beltHigh, columnAlong, movedTimes, readerTimes, stripDepth, stripHigh } from './layout.ts'
import { buttDepth } from './needles.ts'
import { type Point, project } from './projection.ts'
import type { PlaceView } from './view.ts'

/** The numbered parts, with the ids by which they are pressed. */
const numbered = [
  { number: 1, name: 'card', id: 'card' },
  { number: 2, name: 'feeler pins', id: 'pin' },
  { number: 3, name: 'sweep', id: 'sweep' },
  { number: 4, name: 'rockers', id: 'rocker' },
  { number: 5, name: 'strips', id: 'strip' },
  { number: 6, name: 'presser', id: 'presser' },
  { number: 7, name: 'first gate', id: 'gate.1' },
  { number: 8, name: 'second gate', id: 'gate.2' },
  { number: 9, name: 'needles', id: 'needle' },
] as const

/** From a part to its balloon, in the picture's pixels. */
const offsets = {
  wide: { 1: [58, -14], 2: [-96, -6], 3: [58, -40], 4: [74, -22], 5: [34, -58], 9: [14, 74] },
  narrow: { 1: [44, -20], 2: [-62, -6], 3: [50, -30], 4: [46, -13], 5: [33, -31], 9: [6, 44] },
} as const satisfies Record<Shape, Record<number, PicturePoint>>

const at = (view: PlaceView, number: keyof (typeof offsets)[Shape], point: Point): Balloon => {
  const [x, y] = project(view.layout, point)
  const [across, down] = offsets[view.layout.shape][number]
  return { number, x: x + across, y: y + down, to: [x, y] }
}

/** The parts of the reader and the strips, whose places hardly change. */
const standing = (view: PlaceView): Balloon[] => {
  const { layout, frame } = view
  const { pins, pivot, top } = layout.reader
  const card = onCard(view, cardEdges[1] - 0.4, layout.card.high * 0.75)
  const strip = [
    along(layout, layout.cut[1] - 0.025 * layout.needles),
    stripDepth(layout, toStrip(4)),
    stripHigh(layout),
  ] as const
  return [
    ...(frame.pass.row === null ? [] : [at(view, 1, card)]),
    at(view, 2, [columnAlong(layout, 1), pins, (pivot + top) / 2 + 2]),
    at(view, 4, [columnAlong(layout, dimensions.columns), pins, pivot - 2]),
    at(view, 5, strip),
  ]
}

/** The sweep's balloon is on the side that is nearer, above both runs of the belt. */
const sweepBalloon = (view: PlaceView): Balloon[] => {
  const { layout } = view
  const [column] = sweepsAt(view).filter((place) => place > 0 && place < dimensions.columns + 1)
  if (column === undefined) return []
  const [x, y] = project(layout, [
    columnAlong(layout, column),
    layout.reader.pins,
    (sweepHigh(view) + beltHigh(layout)) / 2,
  ])
  const isLeft = column < (dimensions.columns + 1) / 2
  const edge = columnAlong(layout, cardEdges[isLeft ? 0 : 1])
  const [beside, down] = offsets[layout.shape][3]
  const place = edge + (isLeft ? -beside : beside)
  const [across, run] = project(layout, [place, layout.reader.pins, beltHigh(layout)])
  return [{ number: 3, x: across, y: run + down, to: [x, y] }]
}

/** Below the bed: the cams under the carriage, side by side, and the needles where the carriage is not. */
const below = (view: PlaceView): Balloon[] => {
  const { layout, frame } = view
  const { presser, gate1, gate2 } = camPoints(view)
  const apart = layout.shape === 'wide' ? 27 : 22
  const drop = layout.shape === 'wide' ? 36 : 22
  const [over] = project(layout, gate1)
  const middle = Math.max(over - apart, apart + 12)
  const [, bottom] = project(layout, [gate1[0], 0, -layout.body])
  const { way } = frame.pass
  const cam = (number: number, point: Point, side: number): Balloon => ({
    number,
    x: middle + side * way * apart,
    y: bottom + drop,
    to: project(layout, point),
  })
  const { needles } = frame.condition.dimensions
  const needle = needleAtSlot(Math.round((frame.x < dimensions.needles / 2 ? 0.8 : 0.2) * needles), needles)
  return [
    cam(6, presser, 1),
    cam(7, gate1, 0),
    cam(8, gate2, -1),
    at(view, 9, [
      along(layout, needle),
      layout.hook + 0.3 * layout.butt + buttDepth(view, needle) - layout.butt,
      0,
    ]),
  ]
}

const plainLabels = (view: PlaceView): Label[] => {
  const { layout, frame } = view
  const { way } = frame.pass
  const cams = below(view).slice(0, 3)
  const [left, right] = [Math.min(...cams.map(({ x }) => x)), Math.max(...cams.map(({ x }) => x))]
  const isRight = way === 1 || left < 100
  const [x, y] = project(layout, [along(layout, layout.first - 4), layout.reader.pins, beltHigh(layout)])
  return [
    {
      text: way === 1 ? 'carriage →' : '← carriage',
      x: isRight ? right + 18 : left - 18,
      y: entryAt(cams, 0).y + 4.5,
      look: isRight ? 'strong' : 'strong end',
    },
    { text: 'belt', x, y: y + 18 },
  ]
}

/** The list of names, three a column, and what the picture's scale is. */
const listOf = (view: PlaceView): Label[] => {
  const { layout } = view
  const isWide = layout.shape === 'wide'
  const [column, line] = isWide ? [130, 19] : [114, 16]
  const names = numbered.flatMap(({ number, name }, n): Label[] => {
    const x = 16 + Math.floor(n / 3) * column - (isWide ? 0 : 12)
    const y = layout.list + (n % 3) * line
    return [
      { text: String(number), x, y, look: 'strong' },
      { text: name, x: x + 15, y },
    ]
  })
  const notes = [
    'Seen in dimetric projection, ISO 5456-3; deck and reader cut open.',
    `Reader and card ${readerTimes(layout).toFixed(1)} times, movements ${movedTimes(layout).toFixed(1)} times as large as the bed.`,
    'Catches of strips at rest are cut short; a triangle is a turn mark.',
  ]
  return isWide
    ? [...names, ...notes.map((text, n) => ({ text, x: 470, y: layout.list + n * line, look: 'small' }))]
    : names
}

/** Balloons with their leader lines, and the names that they stand for. */
export const drawLabels = (root: Group, view: PlaceView): void => {
  const band = drawGroup(root, 'label-band')
  const balloons = [...standing(view), ...sweepBalloon(view), ...below(view)]
  const heads = drawBalloons(band, balloons)
  write(heads, ({ number }) => ({ 'data-part': entryAt(numbered, number - 1).id }))
  drawTexts(band, 'plain-labels', view.layout.shape === 'wide' ? plainLabels(view) : [])
  drawTexts(band, 'list', listOf(view))
}
