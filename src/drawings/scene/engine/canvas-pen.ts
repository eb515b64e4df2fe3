import type { PicturePoint } from '../../shared/paths.ts'
import type { Pen, Weight } from './pen.ts'
import { wireOutline } from './svg-pen.ts'

/** The colours and widths of one look, as the styles have them. */
export interface Inks {
  /** From the lightest, 0, to the darkest, 4. */
  readonly tones: readonly string[]
  readonly lines: Readonly<Record<Weight, { readonly colour: string; readonly width: number }>>
  readonly marks: Readonly<Record<'hole' | 'opening' | 'blocked', string>>
}

/** Dashes of the thin lines that join what is taken apart, in pixels. */
const axisDashes = [9, 3, 2, 3]

/** What a pen draws on: the canvas of a page, or one that is seen nowhere. */
export type Canvas2D = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D

/** A pen that draws on a canvas, its lines `line` times as wide. `now` gives the inks of what is drawn now. */
export const canvasPen = (context: Canvas2D, line: number, now: () => Inks): Pen => {
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
  // To set a colour is dear, also where it is the same.
  let [filled, stroked] = ['', '']
  const fill = (colour: string): void => {
    if (colour !== filled) context.fillStyle = filled = colour
    context.fill()
  }
  const stroke = (colour: string, width: number): void => {
    if (colour !== stroked) context.strokeStyle = stroked = colour
    context.lineWidth = width
    context.stroke()
  }
  return {
    fill: (tone, loops, goesOn) => {
      const colour = now().tones[tone]!
      loopsOf(loops)
      fill(colour)
      if (goesOn) stroke(colour, 0.7 * line)
    },
    mark: (look, loops) => {
      loopsOf(loops)
      const inks = now()
      fill(inks.marks[look === 'rim' || look === 'torn' ? 'hole' : look])
      const edge = look === 'rim' ? inks.lines.mark : inks.lines.wrong
      if (look !== 'hole' && look !== 'opening') stroke(edge.colour, edge.width * line)
    },
    lines: (weight, points) => {
      context.beginPath()
      for (let n = 0; n + 1 < points.length; n += 2) {
        context.moveTo(points[n]![0], points[n]![1])
        context.lineTo(points[n + 1]![0], points[n + 1]![1])
      }
      const { colour, width } = now().lines[weight]
      if (weight === 'axis') context.setLineDash(axisDashes)
      stroke(colour, width * line)
      if (weight === 'axis') context.setLineDash([])
    },
    wire: (from, to, radius, open) => {
      const { lines, tones } = now()
      const { colour } = lines.outline
      const edge = radius + wireOutline * line
      const isOpen = open[0] || open[1]
      if (isOpen) context.lineCap = 'butt'
      context.beginPath()
      trace([from, to])
      stroke(colour, 2 * edge)
      context.lineCap = 'round'
      if (isOpen && !(open[0] && open[1])) {
        const [x, y] = open[0] ? to : from
        context.beginPath()
        context.arc(x, y, edge, 0, 2 * Math.PI)
        fill(colour)
        context.beginPath()
        trace([from, to])
      }
      stroke(tones[0]!, 2 * radius)
    },
    spring: (points) => {
      context.beginPath()
      trace(points)
      stroke(now().lines.outline.colour, 1.9 * line)
      stroke(now().tones[0]!, 0.6 * line)
    },
  }
}
