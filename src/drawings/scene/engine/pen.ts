import type { PicturePoint } from '../../shared/paths.ts'

/** Lines of a drawing by their weight. */
export type Weight = 'outline' | 'crease' | 'mark' | 'hatching' | 'wrong' | 'axis'

/** How a hole is drawn. */
export type MarkLook = 'hole' | 'opening' | 'rim' | 'torn' | 'blocked'

/** What draws: a canvas, or what writes SVG. Positions and lengths are in the picture's pixels. */
export interface Pen {
  /** Surfaces of a tone, 0 the lightest to 4 the darkest; `goesOn` where a joint is not to be seen as a gap. */
  readonly fill: (tone: number, loops: readonly (readonly PicturePoint[])[], goesOn: boolean) => void
  /** Holes and openings in a surface; a rim is a hole with a line round it, and one torn or blocked is marked as wrong. */
  readonly mark: (look: MarkLook, loops: readonly (readonly PicturePoint[])[]) => void
  /** Lines between pairs of points, one pair after the other. */
  readonly lines: (weight: Weight, points: readonly PicturePoint[]) => void
  /** A wire: `open` says at which ends its outline stops, as the wire goes on there. */
  readonly wire: (
    from: PicturePoint,
    to: PicturePoint,
    radius: number,
    open: readonly [boolean, boolean],
  ) => void
  /** A thin spring. */
  readonly spring: (points: readonly PicturePoint[]) => void
}
