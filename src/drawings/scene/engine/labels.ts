import type { PicturePoint } from '../../shared/paths.ts'

/** A thing that wants a label: its name, and the points of the picture at which it is seen. */
export interface Wanted<Name> {
  readonly name: Name
  readonly points: readonly PicturePoint[]
  /** The margin at which its label has been so far, which it keeps where there is room. */
  readonly side?: 'left' | 'right' | undefined
}

/** Where a label is: at one of the picture's two margins, with a line to what it names. */
export interface Placed<Name> {
  readonly name: Name
  readonly side: 'left' | 'right'
  readonly x: number
  readonly y: number
  readonly to: PicturePoint
}

/** The margins: where the labels are on either side, between which heights, and how far apart at least. */
export interface Margins {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  readonly step: number
}

/** Moves labels of one margin apart, each as little as may be, within the margin. */
const spread = (wanted: readonly number[], { top, bottom, step }: Margins): number[] => {
  const places: number[] = []
  for (const y of wanted) places.push(Math.max(y, (places.at(-1) ?? top - step) + step))
  let limit = bottom
  for (let n = places.length - 1; n >= 0; n--) {
    places[n] = Math.min(places[n]!, limit)
    limit = places[n]! - step
  }
  return places
}

const turn = (a: PicturePoint, b: PicturePoint, c: PicturePoint): number =>
  Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]))

/** Whether two lines between points cross. */
export const isCrossing = (a: PicturePoint, b: PicturePoint, c: PicturePoint, d: PicturePoint): boolean =>
  turn(a, b, c) !== turn(a, b, d) && turn(c, d, a) !== turn(c, d, b)

/** Orders labels of one margin so that none of their lines cross: a swap of two that do always makes them shorter. */
const uncross = (targets: PicturePoint[], x: number, places: readonly number[]): void => {
  let isDone = false
  while (!isDone) {
    isDone = true
    for (let n = 0; n < targets.length; n++)
      for (let k = n + 1; k < targets.length; k++) {
        if (!isCrossing([x, places[n]!], targets[n]!, [x, places[k]!], targets[k]!)) continue
        ;[targets[n], targets[k]] = [targets[k]!, targets[n]!]
        isDone = false
      }
  }
}

/** Of some points the one that is nearest to a margin. */
const nearestTo = (side: 'left' | 'right', points: readonly PicturePoint[]): PicturePoint | undefined =>
  points.toSorted(([one], [other]) => (side === 'left' ? one - other : other - one))[0]

/** Puts labels at the nearer margin, spread and uncrossed. What is seen nowhere has none. */
export const placeLabels = <Name>(wanted: readonly Wanted<Name>[], margins: Margins): Placed<Name>[] => {
  const most = Math.floor((margins.bottom - margins.top) / margins.step) + 1
  const sides: Record<'left' | 'right', { name: Name; to: PicturePoint }[]> = { left: [], right: [] }
  const middle = (margins.left + margins.right) / 2
  for (const { name, points, side: kept } of wanted) {
    const [left, right] = [nearestTo('left', points), nearestTo('right', points)]
    if (!left || !right) continue
    const isLeft = left[0] - margins.left <= margins.right - right[0]
    const near = kept ?? (isLeft ? 'left' : 'right')
    const side = sides[near].length < most ? near : near === 'left' ? 'right' : 'left'
    sides[side].push({ name, to: side === 'left' ? left : right })
  }
  // Neither margin is left much emptier than the other where a part is near the middle.
  for (const [full, other] of [
    ['left', 'right'],
    ['right', 'left'],
  ] as const)
    while (sides[full].length > sides[other].length + 2) {
      const nearest = sides[full].reduce((one, each) =>
        Math.abs(each.to[0] - middle) < Math.abs(one.to[0] - middle) ? each : one,
      )
      sides[full].splice(sides[full].indexOf(nearest), 1)
      const points = wanted.find(({ name }) => name === nearest.name)!.points
      sides[other].push({ name: nearest.name, to: nearestTo(other, points)! })
    }
  return (['left', 'right'] as const).flatMap((side) => {
    const list = sides[side].toSorted((one, other) => one.to[1] - other.to[1])
    const x = margins[side]
    const places = spread(
      list.map(({ to }) => to[1]),
      margins,
    )
    const targets = list.map(({ to }) => to)
    uncross(targets, x, places)
    return targets.map((to, n) => ({
      name: list.find((each) => each.to === to)!.name,
      side,
      x,
      y: places[n]!,
      to,
    }))
  })
}
