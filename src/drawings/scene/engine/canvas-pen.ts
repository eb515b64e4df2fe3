import type { PicturePoint } from '../../shared/paths.ts'
import type { Pen, Weight } from './ink.ts'
import { wireOutline } from './svg-pen.ts'

/** The colours and widths of lines and marks, as the styles have them. */
export interface Inks {
  readonly lines: Readonly<Record<Weight, { readonly colour: string; readonly width: number }>>
  readonly marks: Readonly<Record<'hole' | 'opening', string>>
}

/** A pen that draws on a canvas with these inks. `tonesNow` gives the tones of what is drawn now. */
export const canvasPen = (
  context: CanvasRenderingContext2D,
  inks: Inks,
  tonesNow: () => readonly string[],
): Pen => {
  const trace = (points: readonly PicturePoint[]): void => {
    for (let n = 0; n < points.length; n++) {
      const [x, y] = points[n]!
      if (n === 0) context.moveTo(x, y)
      else context.lineTo(x, y)
    }
  }
  const loopsOf = (loops: readonly (readonly PicturePoint[])[]): void => {
    context.beginPath()
    for (const loop of loops) {
      trace(loop)
      context.closePath()
    }
  }
  const capsule = (
    [x1, y1]: PicturePoint,
    [x2, y2]: PicturePoint,
    radius: number,
    [openFrom, openTo]: readonly [boolean, boolean],
  ): void => {
    const angle = Math.atan2(y2 - y1, x2 - x1)
    const [nx, ny] = [-Math.sin(angle) * radius, Math.cos(angle) * radius]
    context.beginPath()
    context.moveTo(x1 - nx, y1 - ny)
    context.lineTo(x2 - nx, y2 - ny)
    if (openTo) context.lineTo(x2 + nx, y2 + ny)
    else context.arc(x2, y2, radius, angle - Math.PI / 2, angle + Math.PI / 2)
    context.lineTo(x1 + nx, y1 + ny)
    if (!openFrom) context.arc(x1, y1, radius, angle + Math.PI / 2, angle - Math.PI / 2)
    context.closePath()
    context.fill()
  }
  const stroke = (colour: string, width: number): void => {
    context.strokeStyle = colour
    context.lineWidth = width
    context.stroke()
  }
  return {
    fill: (tone, loops, goesOn) => {
      const colour = tonesNow()[tone]!
      loopsOf(loops)
      context.fillStyle = colour
      context.fill()
      if (goesOn) stroke(colour, 0.7)
    },
    mark: (look, loops) => {
      loopsOf(loops)
      context.fillStyle = inks.marks[look]
      context.fill()
    },
    lines: (weight, points) => {
      context.beginPath()
      for (let n = 0; n + 1 < points.length; n += 2) {
        context.moveTo(points[n]![0], points[n]![1])
        context.lineTo(points[n + 1]![0], points[n + 1]![1])
      }
      const { colour, width } = inks.lines[weight]
      stroke(colour, width)
    },
    wire: (from, to, radius, open) => {
      context.fillStyle = inks.lines.outline.colour
      capsule(from, to, radius + wireOutline, open)
      context.fillStyle = tonesNow()[0]!
      capsule(from, to, radius, [false, false])
    },
    spring: (points) => {
      context.beginPath()
      trace(points)
      stroke(inks.lines.outline.colour, 1.9)
      stroke(tonesNow()[0]!, 0.6)
    },
  }
}
