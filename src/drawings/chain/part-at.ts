import { modulo, needleName, type Bed } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Frame } from '../../mechanism/frame.ts'
import { type Column, isColumn, toNeedle, isNeedle } from '../../mechanism/indices.ts'
import { parsePart, type PartId } from '../../mechanism/part.ts'
import { sweepShown } from '../../words/figures/sweep.ts'
import { type CamId, camSpansOf, carriageHalf, camIds } from '../shared/cams.ts'
import type { Box } from '../shared/definitions.ts'
import { wedgeEnds } from '../shared/wedge.ts'
import { type ChainLayout, columnX, needleX, perMm, stripY } from './layout.ts'
import { levelY } from './reader-band.ts'

/** A place in the figure: what is there, and for the card which of its holes. */
export interface PartHit {
  readonly part: PartId
  readonly hole?: { readonly row: number; readonly column: Column }
}

const camBox = (layout: ChainLayout, from: number, frame: Frame, cam: CamId): Box => {
  const x = (behind: number): number => needleX(layout, from, frame.x - frame.pass.way * behind)
  const span = camSpansOf(frame.condition.dimensions)[cam]
  const [near, far] = [x(span[0]), x(span[1])]
  const left = Math.min(near, far)
  return {
    x: left,
    y: layout.buttTop,
    width: Math.abs(far - near),
    height: layout.buttBottom - layout.buttTop - 8,
  }
}

const sweepBox = (layout: ChainLayout, frame: Frame): Box => {
  const mm = perMm(layout)
  const top = levelY(layout, 3.75)
  return {
    x: columnX(layout, sweepShown(frame).at) + wedgeEnds.left * mm,
    y: top,
    width: (wedgeEnds.right - wedgeEnds.left) * mm,
    height: levelY(layout, 2) - top,
  }
}

/** Where the rockers begin, below the pins' tips. */
const rockerTop = (layout: ChainLayout): number => 2 * layout.pivot - layout.foot

const holds = (box: Box, x: number, y: number): boolean =>
  x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height

/** The box of a part named by its id; null where it is not in the picture now. */
export const boxOf = (layout: ChainLayout, from: number, frame: Frame, id: string): Box | null => {
  const part = parsePart(id)
  if (!part) return null
  const columnBox = (column: Column, top: number, bottom: number): Box => ({
    x: columnX(layout, column) - layout.pitch / 2,
    y: top,
    width: layout.pitch,
    height: bottom - top,
  })
  switch (part.kind) {
    case 'card':
      return {
        x: layout.reader,
        y: layout.cardTop,
        width: dimensions.columns * layout.pitch,
        height: layout.cardRow + 8 - layout.cardTop,
      }
    case 'pin':
      return columnBox(part.column, levelY(layout, 3.2), rockerTop(layout))
    case 'sweep':
      return sweepBox(layout, frame)
    case 'rocker':
      return columnBox(part.column, rockerTop(layout), layout.plate)
    case 'strip':
      return {
        x: layout.left,
        y: stripY(layout, part.strip) - 6,
        width: (layout.needles - 0.8) * layout.pitch,
        height: layout.stripSpacing - 2,
      }
    case 'presser':
      return camBox(layout, from, frame, 'presser')
    case 'gate':
      return camBox(layout, from, frame, `gate.${part.gate}`)
    case 'carriage':
      return {
        x: needleX(layout, from, frame.x - carriageHalf),
        y: layout.buttTop - 26,
        width: 2 * carriageHalf * layout.pitch,
        height: layout.hook + 56 - layout.buttTop,
      }
    case 'needle': {
      if (part.needle < from || part.needle > from + layout.needles - 1) return null
      return {
        x: needleX(layout, from, part.needle) - layout.pitch / 2,
        y: layout.tail - 14,
        width: layout.pitch,
        height: layout.hook - layout.tail + 46,
      }
    }
    case 'catch':
    case 'pawl':
    case 'turn':
    case 'belt':
    case 'lever':
    case 'pivots':
    case 'retainer':
      return null
  }
}

const inReader = (layout: ChainLayout, frame: Frame, x: number, y: number): PartHit | null => {
  const column = Math.floor((x - layout.reader) / layout.pitch) + 1
  if (!isColumn(column)) return null
  if (y <= layout.cardRow + layout.rowSpacing / 2) {
    const rows = frame.condition.card?.length
    if (rows === undefined || frame.pass.row === null) return null
    const offset = Math.round((layout.cardRow - y) / layout.rowSpacing)
    return { part: 'card', hole: { row: modulo(frame.pass.row - 1 + offset, rows) + 1, column } }
  }
  if (holds(sweepBox(layout, frame), x, y)) return { part: 'sweep' }
  return { part: y < rockerTop(layout) ? `pin.${column}` : `rocker.${column}` }
}

/** What is at a place of the picture; null where nothing does. Generous, so that a finger can hit thin parts. */
export const partAt = (
  layout: ChainLayout,
  from: number,
  frame: Frame,
  x: number,
  y: number,
): PartHit | null => {
  if (y < layout.cardTop || y > layout.map - 12) return null
  if (y < layout.strips - 9) return inReader(layout, frame, x, y)
  const strip = Math.round((y - 2 - layout.strips) / layout.stripSpacing) + 1
  if (strip <= dimensions.strips) return { part: `strip.${Math.max(1, strip)}` }
  const cam = camIds.find((name) => holds(camBox(layout, from, frame, name), x, y))
  if (cam) return { part: cam }
  const index = Math.round(from + (x - layout.left) / layout.pitch)
  if (y >= layout.buttTop && isNeedle(index, frame.condition.dimensions.needles))
    return { part: `needle.${needleName(index)}` }
  const carriage = boxOf(layout, from, frame, 'carriage')
  return carriage && holds(carriage, x, y) ? { part: 'carriage' } : null
}

/** The parts as rows to walk through with arrow keys, from the card down to the needles. */
export const partRows = (layout: ChainLayout, from: number, whole: Bed): PartId[][] => {
  const columns = Array.from({ length: dimensions.columns }, (_, n) => n + 1)
  const first = Math.max(whole.first, Math.ceil(from))
  const last = Math.min(whole.last, Math.floor(from + layout.needles - 1))
  return [
    ['card'],
    columns.map((column): PartId => `pin.${column}`),
    ['sweep'],
    columns.map((column): PartId => `rocker.${column}`),
    columns.slice(0, dimensions.strips).map((strip): PartId => `strip.${strip}`),
    ['presser', 'gate.1', 'gate.2'],
    Array.from(
      { length: Math.max(0, last - first + 1) },
      (_, n): PartId => `needle.${needleName(toNeedle(first + n))}`,
    ),
  ]
}
