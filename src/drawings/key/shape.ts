import { type Box, edge, endOf, face, frontOf, type Origin, type Point, topOf } from '../place/projection.ts'

/** Size of the key picture in its own pixels. */
export const size = { width: 132, height: 72 } as const

const origin: Origin = { left: 2.5, top: 50.5 }

/** Lengths along the bed, depths and heights of the machine as small as this. */
const bed: Box = { from: [0, 0, -5], to: [104, 62, 0] }
const deck: Box = { from: [0, 31, 0], to: [104, 62, 2.5] }
const reader: Box = { from: [52, 40, 2.5], to: [76, 58, 19] }
const carriage: Box = { from: [22, 3, 0], to: [37, 28, 6] }
const belt = { depth: 40, high: 23, from: 8, to: 97 } as const
const card = { left: 54, right: 74, depth: 45, low: 20, high: 39 } as const
const butts = 17

const faces = (box: Box): string => topOf(origin, box) + frontOf(origin, box) + endOf(origin, box)

/** A level line along the bed. */
const level = (from: number, to: number, y: number, z: number): string =>
  edge(origin, [from, y, z], [to, y, z])

/** Upright lines side by side along the bed. */
const comb = (from: number, to: number, step: number, y: number, low: number, high: number): string => {
  let path = ''
  for (let x = from; x <= to; x += step) path += edge(origin, [x, y, low], [x, y, high])
  return path
}

const stripLines = [36, 44, 52].map((y) => level(0, deck.to[0], y, deck.to[2])).join('')

const needleLines = Array.from({ length: 14 }, (_, n) => {
  const x = 8 + n * 7
  return edge(origin, [x, -2, 0], [x, 26, 0])
}).join('')

const cardFace = face(
  origin,
  [card.left, card.depth, card.low],
  [card.right, card.depth, card.low],
  [card.right, card.depth + 4, card.high],
  [card.left, card.depth + 4, card.high],
)

const { depth, high } = belt

/** The pieces of the picture from the back to the front: what is filled, and what is only a line. */
export const pieces: readonly { readonly name: string; readonly path: string }[] = [
  { name: 'solid', path: faces(bed) },
  { name: 'solid', path: faces(deck) },
  { name: 'thin', path: stripLines + needleLines },
  { name: 'solid', path: faces(reader) },
  { name: 'thin', path: comb(reader.from[0] + 3, reader.to[0] - 3, 3, reader.from[1], 8, 19) },
  { name: 'solid', path: cardFace },
  {
    name: 'line',
    path:
      level(belt.from, belt.to, depth, high) +
      edge(origin, [belt.from, depth, high], [belt.from, depth, 2.5]) +
      edge(origin, [belt.to, depth, high], [belt.to, depth, 2.5]),
  },
  { name: 'solid', path: faces(carriage) },
]

/** A part's shape, and the middle of the ring round it. */
export interface Spot {
  readonly shape: string
  readonly middle: Point
}

const slab = (x0: number, x1: number, y: number, low: number, up: number): string =>
  face(origin, [x0, y, low], [x1, y, low], [x1, y, up], [x0, y, up])

const floor = (x0: number, x1: number, y0: number, y1: number, z: number): string =>
  face(origin, [x0, y0, z], [x1, y0, z], [x1, y1, z], [x0, y1, z])

const front = reader.from[1]
const middle = (reader.from[0] + reader.to[0]) / 2

/** Where each stage of the chain is. */
export const spots = {
  card: { shape: cardFace, middle: [middle, card.depth + 2, 30] },
  sweep: { shape: slab(60, 68, depth, 19.5, 24.5), middle: [64, depth, 22] },
  pin: { shape: slab(reader.from[0], reader.to[0], front, 12, 19), middle: [middle, front, 15.5] },
  rocker: { shape: slab(reader.from[0], reader.to[0], front, 3, 11), middle: [middle, front, 7] },
  strip: { shape: floor(0, 104, 33, 37, 2.5), middle: [92, 35, 2.5] },
  hold: { shape: floor(38, 46, butts - 5, butts + 5, 0), middle: [42, butts, 0] },
  gate: { shape: floor(22, 30, 3, 28, 6), middle: [26, 15.5, 6] },
  needle: { shape: floor(4, 18, -2, 26, 0), middle: [11, 12, 0] },
} as const satisfies Record<string, Spot>

export { origin }
