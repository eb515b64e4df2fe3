import { toColumn } from '../../mechanism/indices.ts'
import { stripOfNeedle, wayOfPass } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { type Fault, partOfFault } from '../../mechanism/fault.ts'
import { partOf } from '../../mechanism/part.ts'
import type { PicturePoint } from '../shared/paths.ts'
import { sweepHigh, sweepsAt } from './belt.ts'
import { onCard } from './card.ts'
import { camPoints } from './carriage.ts'
import { along, beltHigh, columnAlong, readerEnds, stripDepth, stripHigh } from './layout.ts'
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

/** Where a fault is in the picture. */
export const anchorOf = (view: PlaceView, fault: Fault): Anchor => {
  const { layout, frame } = view
  const { pins, pivot, top } = layout.reader
  const anchor = (side: Anchor['side'], point: Point): Anchor => ({ place: project(layout, point), side })
  const cams = camPoints(view)
  const part = partOf(partOfFault(fault))
  switch (part.kind) {
    case 'pin':
      return anchor('above', [columnAlong(layout, part.column), pins, (pivot + top) / 2])
    case 'rocker':
      return anchor('above', rodOf(view, part.column).head)
    case 'strip': {
      const x = along(layout, layout.cut[0] + 0.07 * layout.needles)
      return anchor('above', [x, stripDepth(layout, part.strip), stripHigh(layout)])
    }
    case 'catch': {
      const depth = stripDepth(layout, stripOfNeedle(part.needle, frame.condition))
      return anchor('above', [along(layout, part.needle), depth, layout.deckHigh])
    }
    case 'sweep': {
      const [column = dimensions.columns / 2] = sweepsAt(view)
      return anchor('above', [columnAlong(layout, column), pins, sweepHigh(view)])
    }
    case 'belt':
      return anchor('above', [along(layout, layout.first + 0.07 * layout.needles), pins, beltHigh(layout)])
    case 'lever':
      return anchor('above', readerEnd(view, 'right'))
    case 'pivots':
      return anchor('above', rodOf(view, toColumn(dimensions.columns / 2)).head)
    case 'pawl':
      return anchor('above', readerEnd(view, part.side === 'left' ? 'left' : 'right'))
    case 'card':
    case 'carriage': {
      const onSheet = onCard(view, dimensions.columns / 2, layout.card.high * 0.55)
      return anchor('above', frame.pass.row === null ? readerEnd(view, 'right') : onSheet)
    }
    case 'turn':
      return anchor('below', turnMark(view, fault.at[0] ?? 2))
    case 'needle': {
      const depth = buttDepth(view, part.needle)
      return anchor('below', [along(layout, part.needle), depth, layout.deckHigh * 0.4])
    }
    case 'retainer':
      return anchor('below', [along(layout, layout.first + 0.11 * layout.needles), layout.butt * 0.3, 0])
    case 'presser':
      return anchor('below', cams.presser)
    case 'gate':
      return anchor('below', cams.gate1)
  }
}
