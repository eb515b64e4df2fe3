import { needleIndex, stripOfNeedle, wayOfPass } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { type Fault, partOfFault } from '../../mechanism/fault.ts'
import type { PicturePoint } from '../shared/paths.ts'
import { sweepsAt } from './belt.ts'
import { onCard } from './card.ts'
import { camPoints } from './carriage.ts'
import { along, beltHigh, columnAlong, levelHigh, readerEnds, stripDepth, stripHigh } from './layout.ts'
import { buttDepth } from './needles.ts'
import { type Point, project } from './projection.ts'
import { rodOf } from './strips.ts'
import type { PlaceView } from './view.ts'

/** Where a fault is pointed at in the picture, and from which side: what lies in front, from below. */
export interface Anchor {
  readonly place: PicturePoint
  readonly side: 'above' | 'below'
}

/** The reader's end on one side, where the pawls are: at its top. */
const readerEnd = ({ layout }: PlaceView, side: 'left' | 'right'): Point => [
  readerEnds(layout)[side === 'left' ? 0 : 1],
  layout.reader.pins,
  layout.reader.top,
]

/** The turn mark where the carriage turns before this pass. */
const turnMark = ({ layout, frame }: PlaceView, pass: number): Point => {
  const { first, last } = frame.condition.bed
  const mark = wayOfPass(pass) === 1 ? first - dimensions.turnMark : last + dimensions.turnMark
  return [along(layout, mark), 0, -layout.body * 0.6]
}

/** A needle's catch, in the cut or under the deck. */
const catchOf = ({ layout }: PlaceView, index: number): Point => [
  along(layout, index),
  stripDepth(layout, stripOfNeedle(index)),
  layout.deckHigh,
]

/** Points from above: what lies behind the needles. */
const behind = (view: PlaceView, name: string, which: string): Point => {
  const { layout } = view
  const number = Number(which)
  switch (name) {
    case 'pin':
      return [columnAlong(layout, number), layout.reader.pins, (layout.reader.pivot + layout.reader.top) / 2]
    case 'rocker':
      return rodOf(view, number).head
    case 'strip':
      return [along(layout, layout.cut[0] + 14), stripDepth(layout, number), stripHigh(layout)]
    case 'catch':
      return catchOf(view, needleIndex(which) ?? 0)
    case 'sweep': {
      const [column = dimensions.columns / 2] = sweepsAt(view)
      return [columnAlong(layout, column), layout.reader.pins, levelHigh(layout, dimensions.sweepEdge)]
    }
    case 'belt':
      return [along(layout, 14), layout.reader.pins, beltHigh(layout)]
    case 'pawl':
      return readerEnd(view, which === 'left' ? 'left' : 'right')
    default:
      return view.frame.pass.row === null
        ? readerEnd(view, 'right')
        : onCard(view, dimensions.columns / 2, layout.card.high * 0.55)
  }
}

/** Points from below: the needles, what lies across them, the carriage over them, and the turn marks. */
const before = (view: PlaceView, fault: Fault, name: string, which: string): Point | null => {
  const { layout } = view
  const cams = camPoints(view)
  switch (name) {
    case 'turn':
      return turnMark(view, fault.at[0] ?? 2)
    case 'needle': {
      const index = needleIndex(which) ?? 0
      return [along(layout, index), buttDepth(view, index), layout.deckHigh * 0.4]
    }
    case 'retainer':
      return [along(layout, 22), layout.butt * 0.3, 0]
    case 'presser':
      return cams.presser
    case 'gate':
      return cams.gate1
    default:
      return null
  }
}

/** Where a fault is in the picture. */
export const anchorOf = (view: PlaceView, fault: Fault): Anchor => {
  const [name = '', which = ''] = partOfFault(fault).split('.')
  const point = before(view, fault, name, which)
  return point
    ? { place: project(view.layout, point), side: 'below' }
    : { place: project(view.layout, behind(view, name, which)), side: 'above' }
}
