import { needleIndex, needleName } from '../../mechanism/bed.ts'
import { modulo } from '../../mechanism/bed.ts'
import { cams, dimensions } from '../../mechanism/dimensions.ts'
import type { Frame } from '../../mechanism/frame.ts'
import { carriageHalf, columnX, type Layout, needleX, stripY } from './layout.ts'
import { levelY } from './reader-band.ts'

/** A place in the figure: what stands there, and for the card which of its holes. */
export interface Hit {
  readonly part: string
  readonly hole?: { readonly row: number; readonly column: number }
}

/** A rectangle in the picture's pixels. */
export interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** Where the cams begin and end, in needles behind the presser's trailing edge. */
const camSpans = {
  presser: [-cams.presserFlat - cams.presserRamp, 0],
  'gate.1': [dimensions.gateLag, dimensions.gateLag + cams.gate1Length],
  'gate.2': [cams.gate2Start, cams.gate2Start + cams.gate2Length],
} as const
type Cam = keyof typeof camSpans

const camBox = (layout: Layout, from: number, frame: Frame, cam: Cam): Box => {
  const [near, far] = camSpans[cam].map((behind) => needleX(layout, from, frame.x - frame.pass.way * behind))
  const left = Math.min(near ?? 0, far ?? 0)
  return {
    x: left,
    y: layout.buttTop,
    width: Math.abs((far ?? 0) - (near ?? 0)),
    height: layout.buttBottom - layout.buttTop - 8,
  }
}

const sweepBox = (layout: Layout, frame: Frame): Box => {
  const half = dimensions.sweepHalf * layout.pitch
  const top = levelY(layout, 3.75)
  return {
    x: columnX(layout, frame.sweepAt) - half,
    y: top,
    width: 2 * half,
    height: levelY(layout, 2) - top,
  }
}

const holds = (box: Box, x: number, y: number): boolean =>
  x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height

/** The box of a part named by its id; null where it is not in the picture now. */
export const boxOf = (layout: Layout, from: number, frame: Frame, part: string): Box | null => {
  const [kind, which = ''] = part.split('.')
  const number = Number(which)
  const column = columnX(layout, number) - layout.pitch / 2
  const readerWidth = 24 * layout.pitch
  switch (kind) {
    case 'card':
      return {
        x: layout.reader,
        y: layout.cardTop,
        width: readerWidth,
        height: layout.cardRow + 8 - layout.cardTop,
      }
    case 'pin':
      return {
        x: column,
        y: levelY(layout, 3.2),
        width: layout.pitch,
        height: layout.pivot - 8 - levelY(layout, 3.2),
      }
    case 'sweep':
      return sweepBox(layout, frame)
    case 'rocker':
      return { x: column, y: layout.pivot - 8, width: layout.pitch, height: layout.rod - layout.pivot + 16 }
    case 'strip':
      return {
        x: layout.left,
        y: stripY(layout, number) - 6,
        width: (layout.needles - 0.8) * layout.pitch,
        height: layout.stripSpacing - 2,
      }
    case 'presser':
    case 'gate':
      return camBox(layout, from, frame, part as Cam)
    case 'carriage':
      return {
        x: needleX(layout, from, frame.x - carriageHalf),
        y: layout.buttTop - 26,
        width: 2 * carriageHalf * layout.pitch,
        height: layout.hook + 56 - layout.buttTop,
      }
    case 'needle': {
      const index = needleIndex(which)
      if (index === null || index < from || index > from + layout.needles - 1) return null
      return {
        x: needleX(layout, from, index) - layout.pitch / 2,
        y: layout.tail - 14,
        width: layout.pitch,
        height: layout.hook - layout.tail + 46,
      }
    }
    default:
      return null
  }
}

const inReader = (layout: Layout, frame: Frame, x: number, y: number): Hit | null => {
  const column = Math.floor((x - layout.reader) / layout.pitch) + 1
  if (column < 1 || column > dimensions.columns) return null
  if (y <= layout.cardRow + layout.rowSpacing / 2) {
    const rows = frame.condition.card?.length
    if (rows === undefined || frame.pass.row === null) return null
    const offset = Math.round((layout.cardRow - y) / layout.rowSpacing)
    return { part: 'card', hole: { row: modulo(frame.pass.row - 1 + offset, rows) + 1, column } }
  }
  if (holds(sweepBox(layout, frame), x, y)) return { part: 'sweep' }
  return { part: y < layout.pivot - 8 ? `pin.${column}` : `rocker.${column}` }
}

/** What stands at a place of the picture; null where nothing does. Generous, so that a finger can hit thin parts. */
export const partAt = (layout: Layout, from: number, frame: Frame, x: number, y: number): Hit | null => {
  if (y < layout.cardTop || y > layout.map - 12) return null
  if (y < layout.strips - 9) return inReader(layout, frame, x, y)
  const strip = Math.round((y - 2 - layout.strips) / layout.stripSpacing) + 1
  if (strip <= dimensions.strips) return { part: `strip.${Math.max(1, strip)}` }
  const cam = (Object.keys(camSpans) as Cam[]).find((name) => holds(camBox(layout, from, frame, name), x, y))
  if (cam) return { part: cam }
  const index = Math.round(from + (x - layout.left) / layout.pitch)
  if (y >= layout.buttTop && index >= 0 && index < dimensions.needles)
    return { part: `needle.${needleName(index)}` }
  const carriage = boxOf(layout, from, frame, 'carriage')
  return carriage && holds(carriage, x, y) ? { part: 'carriage' } : null
}

/** The parts as rows to walk through with arrow keys, from the card down to the needles. */
export const partRows = (layout: Layout, from: number): string[][] => {
  const columns = Array.from({ length: dimensions.columns }, (_, n) => n + 1)
  const first = Math.max(0, Math.ceil(from))
  const last = Math.min(dimensions.needles - 1, Math.floor(from + layout.needles - 1))
  return [
    ['card'],
    columns.map((column) => `pin.${column}`),
    ['sweep'],
    columns.map((column) => `rocker.${column}`),
    columns.slice(0, dimensions.strips).map((strip) => `strip.${strip}`),
    ['presser', 'gate.1', 'gate.2'],
    Array.from({ length: Math.max(0, last - first + 1) }, (_, n) => `needle.${needleName(first + n)}`),
  ]
}
