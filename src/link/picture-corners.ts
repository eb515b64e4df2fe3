/** A point of a picture, in pixels from its upper left corner. */
export interface PicturePoint {
  readonly x: number
  readonly y: number
}

/** The corners of a card's grid in a picture, as the card is seen there: the upper left one first, clockwise. */
export type Corners = readonly [PicturePoint, PicturePoint, PicturePoint, PicturePoint]

/** The corners of the picture itself, `width` by `height` pixels. */
export const wholePicture = (width: number, height: number): Corners => [
  { x: 0, y: 0 },
  { x: width, y: 0 },
  { x: width, y: height },
  { x: 0, y: height },
]

/** Whether corners are those of the whole picture. */
export const areWhole = (corners: Corners, width: number, height: number): boolean =>
  wholePicture(width, height).every(({ x, y }, n) => corners[n]?.x === x && corners[n].y === y)

/** Twice the area of a triangle in square pixels, above 0 where its corners go round clockwise as seen. */
const turn = (one: PicturePoint, two: PicturePoint, three: PicturePoint): number =>
  (two.x - one.x) * (three.y - one.y) - (three.x - one.x) * (two.y - one.y)

/** Half a pixel: corners nearer to one line than that give no grid. */
const least = 0.5

/** Whether corners can be those of a grid: clockwise, with no corner inside the triangle of the others. */
export const areGrid = ([one, two, three, four]: Corners): boolean =>
  Math.min(turn(one, two, three), turn(two, three, four), turn(three, four, one), turn(four, one, two)) >
  least

/**
 * Finds where a point of the grid is in the picture: `across` and `down` are its shares of the grid's width and height,
 * 0 to 1. It is the projective mapping that takes the unit square to the corners, so a card photographed from the side
 * is squared as it lies. The corners must be those of a grid (`areGrid`).
 */
export const projectionTo = ([one, two, three, four]: Corners): ((
  across: number,
  down: number,
) => PicturePoint) => {
  // The four corners' equations, solved for the mapping's eight numbers.
  const [ax, ay] = [two.x - three.x, two.y - three.y]
  const [bx, by] = [four.x - three.x, four.y - three.y]
  const [sx, sy] = [one.x - two.x + three.x - four.x, one.y - two.y + three.y - four.y]
  const divisor = ax * by - bx * ay
  const acrossTilt = (sx * by - bx * sy) / divisor
  const downTilt = (ax * sy - sx * ay) / divisor
  const acrossX = two.x - one.x + acrossTilt * two.x
  const acrossY = two.y - one.y + acrossTilt * two.y
  const downX = four.x - one.x + downTilt * four.x
  const downY = four.y - one.y + downTilt * four.y
  return (across, down) => {
    const depth = 1 + acrossTilt * across + downTilt * down
    return {
      x: (one.x + acrossX * across + downX * down) / depth,
      y: (one.y + acrossY * across + downY * down) / depth,
    }
  }
}

const distance = (one: PicturePoint, two: PicturePoint): number => Math.hypot(two.x - one.x, two.y - one.y)

/** About how wide and high what is within corners is, in pixels: the mean of each two edges across from each other. */
export const sizeWithin = ([one, two, three, four]: Corners): { width: number; height: number } => ({
  width: (distance(one, two) + distance(four, three)) / 2,
  height: (distance(one, four) + distance(two, three)) / 2,
})

/** The corners with one of them, counted from 0, elsewhere. */
export const withCorner = (corners: Corners, which: number, point: PicturePoint): Corners => {
  const [one, two, three, four] = corners.map((corner, n) => (n === which ? point : corner))
  if (!one || !two || !three || !four) throw new RangeError('a grid has four corners')
  return [one, two, three, four]
}
