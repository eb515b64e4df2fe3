import { dimensions } from '../../mechanism/dimensions.ts'
import { type Column, measureOfColumn } from '../../mechanism/indices.ts'
import { at as entryAt, lastOf } from '../../mechanism/lookup.ts'
import { holePresented } from '../../mechanism/pin.ts'
import type { Line } from '../shared/linework.ts'
import { boxPath, type PicturePoint, polyline, px, ring } from '../shared/paths.ts'
import { alongOf, bedX, lift, stripTop } from './layout.ts'
import type { StripView } from './view.ts'

/** How a column drives the strip. Lengths in pixels. */
interface Rod {
  readonly column: Column
  /** Where the front leg of its pin stands at rest. */
  readonly x: number
  /** How far the sweep pushes that leg to the left. */
  readonly lean: number
  /** How far the rocker's rod goes to the right, and how far the strip gives way to it. */
  readonly out: number
  readonly followed: number
  readonly pushes: boolean
  /** How far the rod is pushed against a strip that does not give way, in mm. */
  readonly stuck: number
}

/** Where a rod is between a butt and the next catch: so many needles to the right of the butt. */
const besideButt = 1.35

/** Where one of the three pins is: its rod goes down to the strip between a butt and the next catch. */
export const columnX = ({ layout, needles }: StripView, n: number): number => {
  const about = entryAt(layout.columns, n)
  const gap = bedX(layout, entryAt(needles, 0) + besideButt)
  const apart = dimensions.strips * layout.pitch
  const nearest = gap + Math.round((about - gap) / apart) * apart
  return nearest + behindLeg(layout.pivot > 0)
}

/** How far to the left of a pin's leg its rocker turns, in pixels: they touch after the lost motion. */
const behindLeg = (isLarge: boolean): number => (isLarge ? 4 : 0)

export const rodsOf = (view: StripView): Rod[] => {
  const { frame, layout, columns, shift } = view
  const along = alongOf(layout)
  return columns.map((column, n) => {
    const out = measureOfColumn(frame.rockerOuts, column)
    return {
      column,
      x: columnX(view, n),
      lean: measureOfColumn(frame.pinLeans, column) * along,
      out: out * along,
      followed: Math.min(out, shift) * along,
      pushes: out > 0,
      stuck: Math.max(0, out - shift),
    }
  })
}

/** Where a rocker turns, at rest a lost motion and half its width to the left of its pin's leg. */
const turnsAt = (view: StripView, { x }: Rod): number => x - behindLeg(view.layout.pivot > 0)

/** The lugs on the strip: a rod that goes to the right takes its lug along. */
export const lugs = (view: StripView): Line[] => {
  const { layout, isBroken, pushed, shift } = view
  const along = alongOf(layout)
  const wide = layout.pivot > 0 ? 4 : 2.5
  const mark = isBroken ? ' broken' : pushed ? ' pushed' : ''
  return rodsOf(view).map((rod) => {
    const left = turnsAt(view, rod) + shift * along + 1.2
    const top = stripTop(layout)
    return {
      look: `lug${mark}`,
      d: boxPath(left, top - wide * 2.2, left + wide, top),
      ...(isBroken ? { hatch: 'broken' as const } : {}),
    }
  })
}

/** Half the height of a rocker between its pin and its rod: both ends turn about the middle. */
const arm = 15

/** A rocker from its top, by its pin's leg, to where its rod begins. */
const rockerPoints = (view: StripView, rod: Rod): PicturePoint[] => {
  const { pivot } = view.layout
  const x = turnsAt(view, rod)
  return [
    [x - rod.out, pivot - arm],
    [x, pivot],
    [x + rod.out, pivot + arm],
  ]
}

/** A rod, bowed where the strip does not give way: down through its slot of the plate to its lug. */
const rodPath = (view: StripView, rod: Rod): string => {
  const { layout } = view
  const x = turnsAt(view, rod)
  const [top, plate, foot] = [layout.rodTop, layout.plate, stripTop(layout) - 2]
  const bow = Math.min(9, Math.sqrt(rod.stuck * (foot - plate)) * 1.6)
  const upper = `M${px(x + rod.out)},${px(top)}V${px(plate)}`
  return bow > 0.3
    ? `${upper}Q${px(x + rod.out + 2 * bow)},${px((plate + foot) / 2)} ${px(x + rod.followed)},${px(foot)}`
    : `${upper}L${px(x + rod.followed)},${px(foot)}`
}

const rockerMark = (view: StripView, { column, pushes }: Rod): string =>
  view.broken.has(`rocker.${column}`) ? ' broken' : pushes ? ' pushed' : ''

/** The plate that guides the rods, cut along its slots. */
export const plate = (view: StripView): Line => {
  const { layout } = view
  const [room, travel] = [
    4,
    view.frame.condition.dimensions.ratio * view.frame.condition.dimensions.sweepThrow * alongOf(layout),
  ]
  const slots = rodsOf(view).map((rod) => turnsAt(view, rod))
  const thick = layout.pivot > 0 ? 5 : 3
  const ends = layout.pivot > 0 ? 64 : 30
  const edges = [
    entryAt(slots, 0) - ends,
    ...slots.flatMap((x) => [x - room, x + travel + room]),
    lastOf(slots) + ends + travel,
  ]
  let d = ''
  for (let n = 0; n + 1 < edges.length; n += 2)
    d += boxPath(entryAt(edges, n), layout.plate - thick / 2, entryAt(edges, n + 1), layout.plate + thick / 2)
  return { look: 'fixed', d, hatch: 'cut' }
}

/** The rods from the rockers down to the strip. */
export const rods = (view: StripView): Line[] =>
  rodsOf(view).map((rod) => ({
    look: `push-rod${rockerMark(view, rod)}`,
    d: rodPath(view, rod),
    part: `rocker.${rod.column}`,
  }))

/** Tip of a pin, and the foot of its front leg. */
const legOf = ({ layout, frame }: StripView, rod: Rod): { tip: number; foot: number } => {
  const raised = measureOfColumn(frame.pinHeights, rod.column) * alongOf(layout) * lift
  return { tip: layout.datum - raised, foot: layout.datum - raised + 62 }
}

/** The card's own height in the picture. */
export const cardY = ({ layout, frame }: StripView): number =>
  layout.datum - frame.condition.dimensions.pinLow * alongOf(layout) * lift - 2

/** The card's edge, the pins' front legs, and the rockers whose tops the legs push to the left. */
export const pins = (view: StripView): Line[] => {
  const { layout, frame } = view
  if (layout.pivot === 0) return []
  const along = alongOf(layout)
  const y = px(cardY(view))
  return rodsOf(view).flatMap((rod) => {
    const { tip, foot } = legOf(view, rod)
    const { row } = frame.pass
    const gap = holePresented(frame.condition, row, rod.column)
      ? (view.frame.condition.dimensions.hole / 2) * along
      : 0
    const card =
      row === null
        ? ''
        : `M${px(rod.x - 40)},${y}H${px(rod.x - gap)}M${px(rod.x + gap)},${y}H${px(rod.x + 40)}`
    const broken = view.broken.has(`pin.${rod.column}`) ? ' broken' : ''
    const leg = (x: number): string =>
      polyline([
        [x, tip],
        [x, foot],
      ])
    return [
      { look: 'back-leg', d: rod.lean > 0 ? leg(rod.x) : '' },
      { look: 'card-edge', d: card, part: 'card' },
      {
        look: `feeler${broken}${rod.pushes ? ' pushed' : ''}`,
        d: leg(rod.x - rod.lean),
        part: `pin.${rod.column}`,
      },
      {
        look: `lever${rockerMark(view, rod)}`,
        d: polyline(rockerPoints(view, rod)),
        part: `rocker.${rod.column}`,
      },
      { look: 'joint', d: ring(turnsAt(view, rod), layout.pivot, 2.6) },
    ]
  })
}

/** The push on its way from a pin to the strip. */
export const rodGlows = (view: StripView): string =>
  rodsOf(view)
    .filter(({ pushes }) => pushes)
    .map((rod) => {
      const { layout } = view
      const x = turnsAt(view, rod)
      const foot = stripTop(layout)
      if (layout.pivot === 0)
        return `M${px(x + rod.out)},${px(layout.rodTop)}L${px(x + rod.followed)},${px(foot)}`
      const leg: PicturePoint[] = [
        [rod.x - rod.lean, legOf(view, rod).tip],
        [rod.x - rod.lean, layout.pivot - arm],
      ]
      return polyline([
        ...leg,
        ...rockerPoints(view, rod),
        [x + rod.out, layout.plate],
        [x + rod.followed, foot],
      ])
    })
    .join('')
