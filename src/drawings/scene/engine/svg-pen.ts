import { outline, px, type PicturePoint } from '../../shared/paths.ts'
import type { Course, Pen, Places } from './pen.ts'
import type { PictureSize } from './visible.ts'

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
      const isEnd = ([x, y]: PicturePoint): boolean => x === end[0] && y === end[1]
      const next = lines.findIndex(([from, to]) => isEnd(from) || isEnd(to))
      if (next < 0) break
      const [[from, to]] = lines.splice(next, 1) as [[PicturePoint, PicturePoint]]
      end = isEnd(from) ? to : from
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
  /** How wide its line is where the styles do not say so, in pixels. */
  readonly wide?: number
}

/** How an SVG picture is written: how wide its lines are, how fine its corners are, and how large it is, in pixels. */
export interface SvgLook {
  readonly line: number
  readonly grain: number
  /** Where it is left out, what is outside the picture is written too. */
  readonly size?: PictureSize
  /** Whether what is drawn now is faint: it is written in few words, without creases and with wires as wide lines. */
  readonly isFaint?: () => boolean
}

/** Whether points are all beyond one edge of a picture. */
const isOutside = (points: readonly PicturePoint[], { width, height }: PictureSize): boolean =>
  points.every(([x]) => x < 0) ||
  points.every(([x]) => x > width) ||
  points.every(([, y]) => y < 0) ||
  points.every(([, y]) => y > height)

/** The points of a course. */
const pointsOn = (places: Places, course: Course): PicturePoint[] =>
  course.map((n) => [places[2 * n]!, places[2 * n + 1]!])

/** A pen that gives what it draws as the paths of an SVG picture. */
export const svgPen = (
  { line, grain, size, isFaint = () => false }: SvgLook,
  onPath: (path: SvgPath) => void,
): Pen => {
  const coarse = (points: readonly PicturePoint[]): PicturePoint[] =>
    points.map(([x, y]) => [Math.round(x / grain) * grain, Math.round(y / grain) * grain])
  const add = (look: string, d: string): void => {
    onPath({ look, d })
  }
  const isInside = (points: readonly PicturePoint[]): boolean => !size || !isOutside(points, size)
  /** The lines of these courses that are in the picture, as pairs of points. */
  const linesInside = (places: Places, courses: readonly Course[]): PicturePoint[] =>
    courses.flatMap((course) => {
      const points = pointsOn(places, course)
      return points.flatMap((from, n) => {
        const to = points[n + 1]
        return to && isInside([from, to]) ? [from, to] : []
      })
    })
  return {
    isEdged: true,
    fill: (tone, places, loops) =>
      add(`t${tone}`, loops.map((loop) => outline(coarse(pointsOn(places, loop)))).join('')),
    mark: (look, places, loops) => {
      const shown = loops.map((loop) => pointsOn(places, loop)).filter(isInside)
      if (shown.length > 0) add(`m-${look}`, shown.map((loop) => outline(coarse(loop))).join(''))
    },
    lines: (weight, places, courses) => {
      if (isFaint() && (weight === 'crease' || weight === 'mark')) return
      const shown = linesInside(places, courses)
      if (shown.length > 0) add(`l-${weight}`, lineOf(coarse(shown)))
    },
    wire: (places, radius, open) => {
      const [from, to] = pointsOn(places, [0, 1]) as [PicturePoint, PicturePoint]
      if (isFaint()) {
        const d = lineOf(coarse([from, to]))
        const edge = open[0] || open[1] ? 'w-edge-on' : 'w-edge-line'
        onPath({ look: edge, d, wide: Math.round(2 * (radius + wireOutline * line)) })
        onPath({ look: 'w-line', d, wide: Math.round(2 * radius) })
        return
      }
      add('w-edge', capsule(from, to, radius + wireOutline * line, open))
      add('t0', capsule(from, to, radius, [false, false]))
    },
    spring: (places, count) => {
      const points = pointsOn(
        places,
        Array.from({ length: count }, (_, n) => n),
      )
      const d = `M${coarse(isFaint() ? points.filter((_, n) => n % 2 === 0) : points)
        .map(([x, y]) => `${px(x)},${px(y)}`)
        .join('L')}`
      add('s-edge', d)
      if (!isFaint()) add('s-wire', d)
    },
  }
}
