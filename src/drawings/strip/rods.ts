import { dimensions } from '../../mechanism/dimensions.ts'
import { type Column, measureOfColumn } from '../../mechanism/indices.ts'
import { at as entryAt } from '../../mechanism/lookup.ts'
import { holePresented } from '../../mechanism/pin.ts'
import type { Line } from '../shared/linework.ts'
import { outline, polyline, px, ring } from '../shared/paths.ts'
import { alongOf, lift } from './layout.ts'
import type { StripView } from './view.ts'

/** The furthest that a rocker can push its rod, in mm: the height of a wedge. */
const most = dimensions.ratio * dimensions.sweepThrow

/** How a column drives its rod: lean of its pin and push of its rocker, in mm, and where its rod is, in pixels. */
interface Rod {
  readonly column: Column
  readonly x: number
  readonly lean: number
  readonly top: number
  readonly bottom: number
  readonly pushes: boolean
  /** How far the rod is pushed against a strip that does not give way. */
  readonly stuck: number
}

export const rodsOf = (view: StripView): Rod[] => {
  const { frame, layout, columns, shift } = view
  const up = alongOf(layout) * lift
  return columns.map((column, n) => {
    const out = measureOfColumn(frame.rockerOuts, column)
    const foot = layout.top - most * up
    return {
      column,
      x: entryAt(layout.rods, n),
      lean: frame.pass.way * measureOfColumn(frame.pinLeans, column),
      top: layout.rodTop + out * up,
      bottom: foot + Math.min(out, shift) * up,
      pushes: out > 0,
      stuck: Math.max(0, out - shift),
    }
  })
}

/** The wedges on the strip: a rod that goes down on one drives the strip to the right. */
export const wedges = (view: StripView): Line[] => {
  const { layout, shift, isBroken, pushed } = view
  const along = alongOf(layout)
  const [wide, tall] = [most * along, most * along * lift]
  return rodsOf(view).map(({ x }) => {
    const apex = x + shift * along
    const d = outline([
      [apex - wide, layout.top],
      [apex, layout.top - tall],
      [apex + wide / 3, layout.top - tall],
      [apex + wide / 3, layout.top],
    ])
    const mark = isBroken ? ' broken' : pushed ? ' pushed' : ''
    return { look: `wedge${mark}`, d, ...(isBroken ? { hatch: 'broken' as const } : {}) }
  })
}

/** A rod, bowed where the strip does not give way; its cup takes the rocker's foot. */
const rodPath = ({ layout }: StripView, { x, top, bottom, stuck }: Rod): string => {
  const head = layout.pivot > 0 ? 5 : 3.5
  const cup = `M${px(x - head)},${px(top - head * 1.5)}L${px(x)},${px(top)}L${px(x + head)},${px(top - head * 1.5)}M${px(x)},${px(top)}`
  const bow = Math.min(9, Math.sqrt(stuck * (bottom - top)) * 1.6)
  return `${cup}${bow > 0.3 ? `Q${px(x + 2 * bow)},${px((top + bottom) / 2)} ${px(x)},${px(bottom)}` : `V${px(bottom)}`}`
}

const rockerMark = (view: StripView, { column, pushes }: Rod): string =>
  view.broken.has(`rocker.${column}`) ? ' broken' : pushes ? ' pushed' : ''

/** The rods from the rockers down to the strip. */
export const rods = (view: StripView): Line[] =>
  rodsOf(view).map((rod) => ({
    look: `push-rod${rockerMark(view, rod)}`,
    d: rodPath(view, rod),
    part: `rocker.${rod.column}`,
  }))

/** A point of a rocker that has turned about its pivot. */
const turned = (rod: Rod, pivot: number, angle: number, x: number, y: number): [number, number] => [
  rod.x + x * Math.cos(angle) - y * Math.sin(angle),
  pivot + x * Math.sin(angle) + y * Math.cos(angle),
]

/** Tip of a pin that the sweep leans over, and the angle by which its rocker turns. */
const pinOf = (view: StripView, rod: Rod): { angle: number; long: number } => {
  const { layout, frame } = view
  const along = alongOf(layout)
  const tall = layout.pivot - layout.datum + measureOfColumn(frame.pinHeights, rod.column) * along * lift
  return { angle: Math.atan2(rod.lean * along, tall), long: tall }
}

/** The cards' edge, the pins that go through it or are stopped by it, and the rockers that the pins turn. */
export const pins = (view: StripView): Line[] => {
  const { layout, frame } = view
  if (layout.pivot === 0) return []
  const along = alongOf(layout)
  const cardY = layout.datum - dimensions.pinLow * along * lift
  return rodsOf(view).flatMap((rod) => {
    const { angle, long } = pinOf(view, rod)
    const { row } = frame.pass
    const gap = holePresented(frame.condition, row, rod.column) ? (dimensions.hole / 2) * along : 0
    const card =
      row === null
        ? ''
        : `M${px(rod.x - 40)},${px(cardY - 2)}H${px(rod.x - gap)}M${px(rod.x + gap)},${px(cardY - 2)}H${px(rod.x + 40)}`
    const broken = view.broken.has(`pin.${rod.column}`) ? ' broken' : ''
    const at = (x: number, y: number): [number, number] => turned(rod, layout.pivot, angle, x, y)
    return [
      { look: 'card-edge', d: card, part: 'card' },
      {
        look: `feeler${broken}${rod.pushes ? ' pushed' : ''}`,
        d: polyline([at(0, -long), at(0, -3)]),
        part: `pin.${rod.column}`,
      },
      {
        look: `lever${rockerMark(view, rod)}`,
        d: outline([
          at(-4.5, -13),
          at(-4.5, 5),
          at(0, layout.rodTop - layout.pivot - 2),
          at(4.5, 5),
          at(4.5, -13),
        ]),
        part: `rocker.${rod.column}`,
      },
      { look: 'joint', d: ring(rod.x, layout.pivot, 2.2) },
    ]
  })
}

/** The push on its way from a pin to the strip. */
export const rodGlows = (view: StripView): string =>
  rodsOf(view)
    .filter(({ pushes }) => pushes)
    .map((rod) => {
      const { layout } = view
      const from = layout.pivot > 0 ? pinOf(view, rod) : null
      const start = from
        ? polyline([turned(rod, layout.pivot, from.angle, 0, -from.long), [rod.x, layout.pivot]])
        : `M${px(rod.x)},${px(rod.top - 8)}`
      return `${start}L${px(rod.x)},${px(rod.top)}V${px(rod.bottom)}`
    })
    .join('')
