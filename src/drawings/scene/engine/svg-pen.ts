import { outline, px, type PicturePoint } from '../../shared/paths.ts'
import type { Pen } from './ink.ts'

/** Lines between pairs of points as a path, in which a line that goes on where another ends continues it. */
const lineOf = (points: readonly PicturePoint[]): string => {
  const lines: [PicturePoint, PicturePoint][] = []
  for (let n = 0; n + 1 < points.length; n += 2) lines.push([points[n]!, points[n + 1]!])
  let path = ''
  while (lines.length > 0) {
    const [start, second] = lines.shift()!
    let end = second
    path += `M${px(start[0])},${px(start[1])}L${px(end[0])},${px(end[1])}`
    for (;;) {
      const next = lines.findIndex(([from, to]) => from === end || to === end)
      if (next < 0) break
      const [[from, to]] = lines.splice(next, 1) as [[PicturePoint, PicturePoint]]
      end = from === end ? to : from
      path += `L${px(end[0])},${px(end[1])}`
    }
  }
  return path
}

/** How much wider than the wire its outline is, on either side, in pixels. */
export const wireOutline = 1.15

/** A wire as a surface: its sides, and round ends where they are not open. */
const capsule = (
  [x1, y1]: PicturePoint,
  [x2, y2]: PicturePoint,
  radius: number,
  [openFrom, openTo]: readonly [boolean, boolean],
): string => {
  const length = Math.hypot(x2 - x1, y2 - y1)
  const [ux, uy] = length < 0.01 ? [1, 0] : [(x2 - x1) / length, (y2 - y1) / length]
  const [nx, ny] = [-uy * radius, ux * radius]
  const r = px(radius)
  const end = (x: number, y: number, isOpen: boolean): string =>
    isOpen ? `L${px(x)},${px(y)}` : `A${r},${r} 0 0 1 ${px(x)},${px(y)}`
  return (
    `M${px(x1 - nx)},${px(y1 - ny)}L${px(x2 - nx)},${px(y2 - ny)}` +
    `${end(x2 + nx, y2 + ny, openTo)}L${px(x1 + nx)},${px(y1 + ny)}${end(x1 - nx, y1 - ny, openFrom)}Z`
  )
}

/** A path of the picture: its look, as a class, and its course. */
export interface SvgPath {
  readonly look: string
  readonly d: string
}

/** A pen that gives what it draws as the paths of an SVG picture. */
export const svgPen = (onPath: (path: SvgPath) => void): Pen => {
  const add = (look: string, d: string): void => {
    onPath({ look, d })
  }
  return {
    fill: (tone, loops) => add(`t${tone}`, loops.map(outline).join('')),
    mark: (look, loops) => add(`m-${look}`, loops.map(outline).join('')),
    lines: (weight, points) => add(`l-${weight}`, lineOf(points)),
    wire: (from, to, radius, open) => {
      add('w-edge', capsule(from, to, radius + wireOutline, open))
      add('t0', capsule(from, to, radius, [false, false]))
    },
    spring: (points) => {
      const d = `M${points.map(([x, y]) => `${px(x)},${px(y)}`).join('L')}`
      add('s-edge', d)
      add('s-wire', d)
    },
  }
}
