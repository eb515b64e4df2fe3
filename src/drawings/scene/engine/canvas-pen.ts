import type { Course, Pen, Places, Weight } from './pen.ts'
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

/** What is left out of a hasty picture, such as one while the machine turns on a slow computer. */
const fine: ReadonlySet<Weight> = new Set(['crease', 'mark', 'hatching'])

/**
 * A pen that draws on a canvas, its lines `line` times as wide. `now` gives the inks of what is drawn now; one in haste
 * leaves out the finest lines.
 */
export const canvasPen = (context: Canvas2D, line: number, now: () => Inks, isHasty = false): Pen => {
  const trace = (places: Places, course: Course): void => {
    const first = 2 * course[0]!
    context.moveTo(places[first]!, places[first + 1]!)
    for (let n = 1; n < course.length; n++) {
      const at = 2 * course[n]!
      context.lineTo(places[at]!, places[at + 1]!)
    }
  }
  const traceLoops = (places: Places, loops: readonly Course[]): void => {
    context.beginPath()
    for (const loop of loops) {
      trace(places, loop)
      context.closePath()
    }
  }
  const traceTo = (places: Places, count: number): void => {
    context.beginPath()
    context.moveTo(places[0]!, places[1]!)
    for (let n = 1; n < count; n++) context.lineTo(places[2 * n]!, places[2 * n + 1]!)
  }
  // Setting a colour or a width takes long, even where it stays the same.
  let [filled, stroked, wide] = ['', '', NaN]
  let isRound = true
  const fill = (colour: string): void => {
    if (colour !== filled) context.fillStyle = filled = colour
    context.fill()
  }
  const stroke = (colour: string, width: number): void => {
    if (colour !== stroked) context.strokeStyle = stroked = colour
    if (width !== wide) context.lineWidth = wide = width
    context.stroke()
  }
  const endRound = (round: boolean): void => {
    if (round === isRound) return
    isRound = round
    context.lineCap = round ? 'round' : 'butt'
  }
  return {
    isEdged: false,
    fill: (tone, places, loops, goesOn) => {
      const colour = now().tones[tone]!
      traceLoops(places, loops)
      fill(colour)
      if (goesOn) stroke(colour, 0.7 * line)
    },
    mark: (look, places, loops) => {
      traceLoops(places, loops)
      const inks = now()
      fill(inks.marks[look === 'rim' || look === 'torn' ? 'hole' : look])
      const edge = look === 'rim' ? inks.lines.mark : inks.lines.wrong
      const isEdged = look === 'rim' ? !isHasty : look !== 'hole' && look !== 'opening'
      if (isEdged) stroke(edge.colour, edge.width * line)
    },
    lines: (weight, places, courses) => {
      if (isHasty && fine.has(weight)) return
      context.beginPath()
      for (const course of courses) trace(places, course)
      const { colour, width } = now().lines[weight]
      if (weight === 'axis') context.setLineDash(axisDashes)
      stroke(colour, width * line)
      if (weight === 'axis') context.setLineDash([])
    },
    wire: (places, radius, open) => {
      const { lines, tones } = now()
      const { colour } = lines.outline
      const edge = radius + wireOutline * line
      const isOpen = open[0] || open[1]
      endRound(!isOpen)
      traceTo(places, 2)
      stroke(colour, 2 * edge)
      endRound(true)
      if (isOpen && !(open[0] && open[1])) {
        const at = open[0] ? 2 : 0
        context.beginPath()
        context.arc(places[at]!, places[at + 1]!, edge, 0, 2 * Math.PI)
        fill(colour)
        traceTo(places, 2)
      }
      stroke(tones[0]!, 2 * radius)
    },
    spring: (places, count) => {
      traceTo(places, count)
      stroke(now().lines.outline.colour, 1.9 * line)
      stroke(now().tones[0]!, 0.6 * line)
    },
  }
}
