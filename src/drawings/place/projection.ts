import { outline, type PicturePoint, polyline } from '../shared/paths.ts'

/** A point of the machine in pixels: along the bed to the right, away from the viewer, and up. */
export type Point = readonly [number, number, number]

/** Where the machine's own origin is in the picture. */
export interface Origin {
  readonly left: number
  readonly top: number
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180
const cosLength = Math.cos(radians(7))
const sinLength = Math.sin(radians(7))
const cosDepth = Math.cos(radians(42)) / 2
const sinDepth = Math.sin(radians(42)) / 2

/**
 * A point's place in the picture, by the dimetric projection of ISO 5456-3: length and height 1 to 1, at 7 degrees
 * and upright; depth 1 to 2, at 42 degrees.
 */
export const project = (origin: Origin, [x, y, z]: Point): PicturePoint => [
  origin.left + x * cosLength + y * cosDepth,
  origin.top + x * sinLength - y * sinDepth - z,
]

/** A closed face through these points. */
export const face = (origin: Origin, ...points: readonly Point[]): string =>
  outline(points.map((point) => project(origin, point)))

/** An open edge through these points. */
export const edge = (origin: Origin, ...points: readonly Point[]): string =>
  polyline(points.map((point) => project(origin, point)))

/** A box with edges along the axes: its near corner, left and below, and its far corner, right and above. */
export interface Box {
  readonly from: Point
  readonly to: Point
}

/** The three faces of a box that are seen. */
export const topOf = (origin: Origin, { from: [x0, y0], to: [x1, y1, z1] }: Box): string =>
  face(origin, [x0, y0, z1], [x1, y0, z1], [x1, y1, z1], [x0, y1, z1])
export const frontOf = (origin: Origin, { from: [x0, y0, z0], to: [x1, , z1] }: Box): string =>
  face(origin, [x0, y0, z0], [x1, y0, z0], [x1, y0, z1], [x0, y0, z1])
export const endOf = (origin: Origin, { from: [, y0, z0], to: [x1, y1, z1] }: Box): string =>
  face(origin, [x1, y0, z0], [x1, y1, z0], [x1, y1, z1], [x1, y0, z1])
