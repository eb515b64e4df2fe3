import { type Card, columnBit, mostRows } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { areWhole, type Corners, projectionTo, wholePicture } from './picture-corners.ts'
import { toColumn } from '../mechanism/indices.ts'

/** A picture's brightness, 0 black to 255 white, row by row from its upper left corner. */
export interface Brightness {
  /** In pixels, at least 1. */
  readonly width: number
  readonly height: number
  /** `width` times `height` values. */
  readonly values: ArrayLike<number>
}

/** How a picture becomes a card. */
export interface PictureSettings {
  /** Brightness, 0 to 255, that parts dark from light; this value itself counts as light. */
  readonly threshold: number
  /** Which places are holes. */
  readonly holes: 'dark' | 'light'
  /** Whether the picture's bottom is row 1, as in a picture of the fabric. */
  readonly isRow1AtBottom: boolean
}

const { columns } = dimensions

/** Brightness of a picture given as red, green, blue and cover, four bytes a pixel; what shows through is white. */
export const brightnessOf = (width: number, height: number, bytes: ArrayLike<number>): Brightness => {
  const values = new Float32Array(width * height)
  for (let n = 0; n < values.length; n++) {
    const byte = (k: number): number => bytes[4 * n + k]!
    // The weights of ITU-R BT.709, on the values as they are stored.
    const shade = 0.2126 * byte(0) + 0.7152 * byte(1) + 0.0722 * byte(2)
    values[n] = 255 + ((shade - 255) * byte(3)) / 255
  }
  return { width, height, values }
}

/** The number of rows that keeps a picture's proportions, if a stitch is as high as wide. */
export const usualRows = (width: number, height: number): number =>
  Math.min(mostRows, Math.max(1, Math.round((columns * height) / width)))

/** The parts of pixels that lie between two places along an edge: each pixel's number and its share. */
const shares = (from: number, to: number): { pixel: number; share: number }[] => {
  const last = Math.ceil(to - 1e-9)
  return Array.from({ length: last - Math.floor(from) }, (_, n) => {
    const pixel = Math.floor(from) + n
    return { pixel, share: Math.min(to, pixel + 1) - Math.max(from, pixel) }
  })
}

/** The mean brightness of each cell where the grid is the whole picture: exact, however few pixels a cell has. */
const wholeAverages = ({ width, height, values }: Brightness, rows: number): number[][] => {
  const across = Array.from({ length: columns }, (_, c) =>
    shares((c * width) / columns, ((c + 1) * width) / columns),
  )
  return Array.from({ length: rows }, (_, r) => {
    const down = shares((r * height) / rows, ((r + 1) * height) / rows)
    return across.map((along) => {
      let [sum, area] = [0, 0]
      for (const line of down)
        for (const { pixel, share } of along) {
          sum += line.share * share * values[line.pixel * width + pixel]!
          area += line.share * share
        }
      return sum / area
    })
  })
}

/** So many points across and down a cell are looked at where the picture has to be squared. */
const looks = 8

/** The mean brightness of points evenly spread over each cell of the grid within the corners. */
const projectedAverages = (
  { width, height, values }: Brightness,
  rows: number,
  corners: Corners,
): number[][] => {
  const project = projectionTo(corners)
  const brightnessAt = (across: number, down: number): number => {
    const { x, y } = project(across, down)
    const column = Math.min(width - 1, Math.max(0, Math.floor(x)))
    const line = Math.min(height - 1, Math.max(0, Math.floor(y)))
    return values[line * width + column]!
  }
  return Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (__, c) => {
      let sum = 0
      for (let down = 0.5; down < looks; down++)
        for (let across = 0.5; across < looks; across++)
          sum += brightnessAt((c + across / looks) / columns, (r + down / looks) / rows)
      return sum / looks ** 2
    }),
  )
}

/**
 * The mean brightness, 0 to 255, of each cell of a grid of 24 columns by so many rows, 1 to 200, from the top on. The
 * grid lies within the corners, which must be those of a grid (`areGrid`); without them it is the whole picture.
 */
export const cellAverages = (
  picture: Brightness,
  rows: number,
  corners = wholePicture(picture.width, picture.height),
): number[][] =>
  areWhole(corners, picture.width, picture.height)
    ? wholeAverages(picture, rows)
    : projectedAverages(picture, rows, corners)

/** The brightness halfway between the darkest and the lightest cell, 0 to 255; the middle where all are alike. */
export const usualThreshold = (cells: readonly (readonly number[])[]): number => {
  const all = cells.flat()
  const least = all.reduce((one, other) => Math.min(one, other), 255)
  const most = all.reduce((one, other) => Math.max(one, other), 0)
  return most - least < 1 ? 128 : Math.round((least + most) / 2)
}

/** The card that a picture's cells give. */
export const cardOfCells = (
  cells: readonly (readonly number[])[],
  { threshold, holes, isRow1AtBottom }: PictureSettings,
): Card => {
  const rows = cells.map((cell) =>
    cell.reduce((row, shade, c) => {
      const isHole = shade < threshold === (holes === 'dark')
      return isHole ? row | columnBit(toColumn(c + 1)) : row
    }, 0),
  )
  return isRow1AtBottom ? rows.reverse() : rows
}
