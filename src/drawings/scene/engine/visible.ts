import type { Camera } from './camera.ts'
import { type Cover, coverOf, crossingsOf, isCovered } from './cover.ts'
import type { Drawn } from './leaf.ts'

/** A picture's width and height, in pixels. */
export interface PictureSize {
  readonly width: number
  readonly height: number
}

/** How much wider than itself a piece is looked for, in pixels: its outline is there too. */
const outline = 1

/** Pixels of a row, or rows of a picture, from one to another: none where the last is before the first. */
type Run = readonly [first: number, last: number]

/** What a piece may cover of so many pixels, and a little more. */
const runOf = (from: number, to: number, count: number): Run => [
  Math.max(0, Math.floor(from - outline)),
  Math.min(count - 1, Math.ceil(to + outline)),
]

/** The pixels of a row that a piece covers, of those it may; some perhaps twice. */
const coveredIn = (cover: Cover, y: number, [first, last]: Run): readonly Run[] => {
  const runs: Run[] = []
  if (cover.wire) {
    for (let x = first; x <= last; x++) if (isCovered(cover, [x, y], 0)) runs.push([x, x])
    return runs
  }
  for (const loop of cover.loops) {
    const crossings = crossingsOf(loop, y)
    for (let n = 0; n < crossings.length; n += 2) {
      const [from, to] = [Math.ceil(crossings[n]!), Math.ceil(crossings[n + 1]!) - 1]
      runs.push([Math.max(first, from), Math.min(last, to)])
    }
  }
  return runs
}

/** The pixels of a picture, and which of them are covered by now. */
interface Canvas extends PictureSize {
  readonly taken: Uint8Array
}

/** Whether a piece covers a pixel that is free. It takes all that it covers, unless one sees through it. */
const covers = ({ taken, width, height }: Canvas, cover: Cover, isOpen: boolean): boolean => {
  const [left, top, right, bottom] = cover.box
  const [columns, rows] = [runOf(left, right, width), runOf(top, bottom, height)]
  let isSeen = false
  for (let y = rows[0]; y <= rows[1]; y++)
    for (const [first, last] of coveredIn(cover, y, columns))
      for (let n = y * width + first; n <= y * width + last; n++) {
        if (taken[n] === 1) continue
        isSeen = true
        if (!isOpen) taken[n] = 1
      }
  return isSeen
}

/** Whether a piece’s outline is on a pixel that is free. */
const edges = ({ taken, width, height }: Canvas, cover: Cover): boolean => {
  const [left, top, right, bottom] = cover.box
  const [columns, rows] = [runOf(left, right, width), runOf(top, bottom, height)]
  for (let y = rows[0]; y <= rows[1]; y++)
    for (let x = columns[0]; x <= columns[1]; x++)
      if (taken[y * width + x] !== 1 && isCovered(cover, [x, y], outline)) return true
  return false
}

/**
 * Which of these pieces, in the order in which they are drawn, have a pixel of the picture that nothing drawn later covers.
 * What has none need not be drawn. One sees through coils.
 */
export const visibleIn = (
  camera: Camera,
  drawn: readonly Drawn[],
  frame: PictureSize,
): ReadonlySet<Drawn> => {
  const canvas = { ...frame, taken: new Uint8Array(frame.width * frame.height) }
  const visible = new Set<Drawn>()
  for (const each of drawn.toReversed()) {
    const cover = coverOf(camera, each.piece, each.shape)
    if (covers(canvas, cover, each.shape.kind === 'coil') || edges(canvas, cover)) visible.add(each)
  }
  return visible
}
