/** Lines of a drawing by their weight. */
export type Weight = 'outline' | 'crease' | 'mark' | 'hatching' | 'wrong' | 'axis'

/** How a hole is drawn. */
export type MarkLook = 'hole' | 'opening' | 'rim' | 'torn' | 'blocked'

/** Points of the picture in pixels, each across and then down. */
export type Places = Float64Array

/** A line from point to point, or the way round a surface, by the count of the points among some places. */
export type Course = readonly number[]

/**
 * What draws: a canvas, or what writes SVG. Positions and lengths are in the picture's pixels. Places are those of the call:
 * afterwards others are written into them.
 */
export interface Pen {
  /** Whether surfaces have an edge of their own colour: then no gap is seen where one goes on in the next. */
  readonly isEdged: boolean
  /** Surfaces of a tone, 0 the lightest to 4 the darkest; `goesOn` where a joint is not to be seen as a gap. */
  readonly fill: (tone: number, places: Places, loops: readonly Course[], goesOn: boolean) => void
  /** Holes and openings in a surface; a rim is a hole with a line round it, and one torn or blocked is marked as wrong. */
  readonly mark: (look: MarkLook, places: Places, loops: readonly Course[]) => void
  readonly lines: (weight: Weight, places: Places, courses: readonly Course[]) => void
  /** A wire between the first two places: `open` says at which ends its outline stops, as the wire goes on there. */
  readonly wire: (places: Places, radius: number, open: readonly [boolean, boolean]) => void
  /** A thin spring through so many places. */
  readonly spring: (places: Places, count: number) => void
}
