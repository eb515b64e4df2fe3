import type { Line } from './linework.ts'
import { outline, type PicturePoint, px } from './paths.ts'

/** A fingertip seen from the side: where it presses, where it points, in degrees from the right and on clockwise, and half its thickness. */
export interface Finger {
  readonly tip: PicturePoint
  readonly points: number
  readonly half: number
}

type Curve = readonly [c1: PicturePoint, c2: PicturePoint, end: PicturePoint]

/** The finger pointing to the right with its tip at 0, in halves of its thickness; it is broken off at the left. */
const skin: { readonly from: PicturePoint; readonly curves: readonly Curve[] } = {
  from: [-6, -1],
  curves: [
    [
      [-4, -1.06],
      [-2.6, -0.9],
      [-1.4, -1],
    ],
    [
      [-0.5, -1.05],
      [0, -0.6],
      [0, 0],
    ],
    [
      [0, 0.6],
      [-0.5, 1.05],
      [-1.4, 1],
    ],
    [
      [-2.6, 0.92],
      [-4, 1.06],
      [-6, 1],
    ],
    [
      [-6.35, 0.45],
      [-5.65, -0.3],
      [-6, -1],
    ],
  ],
}
const nail: typeof skin = {
  from: [-1.75, -0.98],
  curves: [
    [
      [-1, -1.12],
      [-0.35, -0.85],
      [-0.14, -0.42],
    ],
    [
      [-0.5, -0.5],
      [-1.3, -0.62],
      [-1.75, -0.98],
    ],
  ],
}
const creases: typeof skin = {
  from: [-3, -0.94],
  curves: [
    [
      [-2.85, -0.75],
      [-2.85, -0.6],
      [-2.95, -0.42],
    ],
  ],
}

/** A finger that presses on a part. */
export const fingerLines = ({ tip, points, half }: Finger): Line[] => {
  const angle = (points * Math.PI) / 180
  // A hand that points to the left is the other hand, so that its nail is above.
  const side = Math.cos(angle) < -0.01 ? -1 : 1
  const place = ([along, aside]: PicturePoint): string => {
    const [x, y] = [along * half, aside * half * side]
    return `${px(tip[0] + x * Math.cos(angle) - y * Math.sin(angle))},${px(tip[1] + x * Math.sin(angle) + y * Math.cos(angle))}`
  }
  const path = ({ from, curves }: typeof skin): string =>
    `M${place(from)}${curves.map((curve) => `C${curve.map(place).join(' ')}`).join('')}`
  return [
    { look: 'hand-skin', d: `${path(skin)}Z` },
    { look: 'hand-nail', d: `${path(nail)}Z` },
    { look: 'hand-crease', d: path(creases) },
  ]
}

/** A broad arrow: the way in which a hand pushes or pulls. */
export const handArrow = (from: PicturePoint, to: PicturePoint, wide = 8): Line => {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  const at = (along: number, aside: number): PicturePoint => [
    from[0] + along * ux - aside * uy,
    from[1] + along * uy + aside * ux,
  ]
  const head = Math.min(length * 0.6, wide * 1.5)
  const [half, neck] = [wide / 2, length - head]
  return {
    look: 'hand-way',
    d: outline([
      at(0, -half),
      at(neck, -half),
      at(neck, -wide),
      at(length, 0),
      at(neck, wide),
      at(neck, half),
      at(0, half),
    ]),
  }
}
