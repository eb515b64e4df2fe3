/** A point of a picture, in its pixels. */
export type Point = readonly [number, number]

/** The corner points of a path of straight lines and curves' ends, with relative and absolute steps. */
export const pointsOf = (element: Element | null | undefined): Point[] => {
  const points: Point[] = []
  let [x, y] = [0, 0]
  for (const [, letter = '', rest = ''] of (element?.getAttribute('d') ?? '').matchAll(
    /([A-Za-z])([^A-Za-z]*)/g,
  )) {
    const numbers = [...rest.matchAll(/-?[\d.]+/g)].map(Number)
    const [a = 0, b = 0] = [numbers.at(-2), numbers.at(-1)]
    const last = numbers.at(-1) ?? 0
    if (letter === 'M' || letter === 'L' || letter === 'Q') [x, y] = [a, b]
    else if (letter === 'H') x = last
    else if (letter === 'V') y = last
    else if (letter === 'h') x += last
    else if (letter === 'v') y += last
    else if (letter === 'a') [x, y] = [x + a, y + b]
    if (letter !== 'Z') points.push([x, y])
  }
  return points
}

/** Least and most of a path's places along one axis: 0 across, 1 down. */
export const spanOf = (element: Element | null | undefined, axis: 0 | 1): { least: number; most: number } => {
  const values = pointsOf(element).map((point) => point[axis])
  return { least: Math.min(...values), most: Math.max(...values) }
}

/** Whether a point lies within a closed path. */
export const isWithin = ([x, y]: Point, corners: readonly Point[]): boolean => {
  let inside = false
  for (const [n, [x1, y1]] of corners.entries()) {
    const [x2, y2] = corners[(n + 1) % corners.length]!
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) * (x2 - x1)) / (y2 - y1)) inside = !inside
  }
  return inside
}
