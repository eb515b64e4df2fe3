import type { Camera } from './camera.ts'
import { type Cover, coverOf, isCovered } from './cover.ts'
import type { Drawn } from './leaf.ts'

/** A picture's width and height, in pixels. */
export interface PictureSize {
  readonly width: number
  readonly height: number
}

/** How much wider than itself a piece is looked for, in pixels: its outline is there too. */
const outline = 1

/** The pixels of a picture that a piece may cover, and a little more. */
const pixelsOf = ({ box }: Cover, { width, height }: PictureSize): { x: number[]; y: number[] } => {
  const range = (from: number, to: number, most: number): number[] => {
    const first = Math.max(0, Math.floor(from - outline))
    const last = Math.min(most - 1, Math.ceil(to + outline))
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, n) => first + n)
  }
  return { x: range(box[0], box[2], width), y: range(box[1], box[3], height) }
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
  const taken = new Uint8Array(frame.width * frame.height)
  const visible = new Set<Drawn>()
  for (const each of drawn.toReversed()) {
    const cover = coverOf(camera, each.piece, each.shape)
    const { x: columns, y: rows } = pixelsOf(cover, frame)
    let isSeen = false
    for (const y of rows)
      for (const x of columns) {
        if (taken[y * frame.width + x] === 1) continue
        if (isCovered(cover, [x, y], 0)) {
          isSeen = true
          if (each.shape.kind !== 'coil') taken[y * frame.width + x] = 1
        } else isSeen ||= isCovered(cover, [x, y], outline)
      }
    if (isSeen) visible.add(each)
  }
  return visible
}
