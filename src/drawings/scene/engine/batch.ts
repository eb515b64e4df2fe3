import type { PicturePoint } from '../../shared/paths.ts'
import type { SvgPath } from './svg-pen.ts'

/** How far a path reaches across the picture, down it, and along its two diagonals, with the lines round it. */
type Bounds = readonly (readonly [least: number, most: number])[]

/** How far lines reach beyond their middle, at most, in pixels. */
const reach = 1.5

const diagonal = Math.SQRT1_2

const boundsOf = ({ d, wide = 0 }: SvgPath): Bounds => {
  // Arcs have their radius first, by which they reach further than what they end, and end where their last numbers say.
  const round = Math.max(0, ...Array.from(d.matchAll(/A([\d.]+),/g), ([, radius]) => Number(radius)))
  const beyond = reach + round + wide / 2
  const points = Array.from(
    d.replace(/A[\d.]+,[\d.]+ 0 [01] [01] /g, 'L').matchAll(/(-?[\d.]+),(-?[\d.]+)/g),
    ([, x, y]): PicturePoint => [Number(x), Number(y)],
  )
  const along = (placeOf: (point: PicturePoint) => number): readonly [number, number] => {
    const places = points.map(placeOf)
    return [Math.min(...places) - beyond, Math.max(...places) + beyond]
  }
  return [
    along(([x]) => x),
    along(([, y]) => y),
    along(([x, y]) => (x + y) * diagonal),
    along(([x, y]) => (x - y) * diagonal),
  ]
}

const overlap = (one: Bounds, other: Bounds): boolean =>
  one.every(([least, most], n) => least < other[n]![1] && other[n]![0] < most)

/** Whether a look's surfaces have lines of another colour, which would be seen over what is before them. */
const isEdged = (look: string): boolean => /(?:^| )m-(?:rim|torn|blocked)$/.test(look)

interface Batch {
  readonly look: string
  readonly wide: number | undefined
  readonly paths: string[]
  readonly bounds: Bounds[]
}

/**
 * The same picture in fewer paths: a path goes together with an earlier one of its look where nothing that was drawn since
 * then is in its place.
 */
export const batched = (paths: readonly SvgPath[]): SvgPath[] => {
  const batches: Batch[] = []
  for (const path of paths) {
    const { look, d, wide } = path
    const own = boundsOf(path)
    let home: Batch | null = null
    for (let n = batches.length - 1; n >= 0; n--) {
      const batch = batches[n]!
      const isOver = batch.bounds.some((bounds) => overlap(bounds, own))
      const isAlike = batch.look === look && batch.wide === wide
      if (isAlike && !(isOver && isEdged(look))) home = batch
      if (isOver && (!isAlike || isEdged(look))) break
    }
    if (home) {
      home.paths.push(d)
      home.bounds.push(own)
    } else batches.push({ look, wide, paths: [d], bounds: [own] })
  }
  return batches.map(({ look, wide, paths: together }) => ({
    look,
    d: together.join(''),
    ...(wide === undefined ? {} : { wide }),
  }))
}
