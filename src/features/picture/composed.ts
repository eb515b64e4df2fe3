import { escaped, tag } from '../../drawings/shared/xml.ts'
import { inLines, type Measure } from './lines.ts'
import type { Inks } from './staging.ts'

/** What is written on a picture beside its drawing. */
export interface Words {
  /** What it is called. */
  readonly title: string
  /** What it shows, for who does not see it. */
  readonly description: string
  /** Lines over the drawing and under it, none of them shown where it is empty. */
  readonly over?: string
  readonly sentence: string
  readonly address: string
}

/** A drawing as SVG without styles, and its size in pixels. */
export interface Drawing {
  readonly markup: string
  readonly width: number
  readonly height: number
}

/** What a picture is written in: its colours, its typeface with the rules that bring it, and how wide words are. */
export interface Means {
  readonly inks: Inks
  readonly typeface: string
  readonly fontRules: string
  /** Words' widths at a size in pixels. */
  readonly measureAt: (size: number) => Measure
}

/** A picture as the text of an SVG file, and its size in pixels. */
export interface Composed {
  readonly svg: string
  readonly width: number
  readonly height: number
}

/** Paper round the drawing, and between it and what is written under it, in pixels. */
const margin = 16

/** Sizes of what is written, in pixels, and lines' distance as a multiple of them. */
const sizes = { over: 20, sentence: 17, address: 14 } as const
const apart = 1.35

/** Sets a drawing on paper with its words, as the text of one SVG file that needs nothing else. */
export const composed = (drawing: Drawing, words: Words, means: Means): Composed => {
  const { inks, typeface, fontRules, measureAt } = means
  const width = drawing.width + 2 * margin
  let y = margin
  const written = (text: string, kind: keyof typeof sizes, fill: string): string => {
    const size = sizes[kind]
    const lines = inLines(text, drawing.width, measureAt(size)).map((line) => {
      y += size * apart
      return tag('text', { x: margin, y: Math.round(y - size * 0.3), 'font-size': size, fill }, escaped(line))
    })
    if (lines.length > 0) y += margin / 2
    return lines.join('')
  }
  const over = written(words.over ?? '', 'over', inks.ink)
  const { markup, ...size } = drawing
  const box = `0 0 ${size.width} ${size.height}`
  const place = tag('svg', { x: margin, y: Math.round(y), ...size, viewBox: box }, markup)
  y += drawing.height + margin / 2
  const under = written(words.sentence, 'sentence', inks.ink) + written(words.address, 'address', inks.soft)
  const height = Math.ceil(y + margin / 2)
  const inside = [
    tag('title', { id: 'title' }, escaped(words.title)),
    tag('desc', { id: 'description' }, escaped(words.description)),
    tag('style', {}, fontRules),
    tag('rect', { width, height, fill: inks.paper }),
    place,
    tag('g', { 'font-family': typeface, 'font-weight': 500 }, over + under),
  ]
  const about = { role: 'img', 'aria-labelledby': 'title', 'aria-describedby': 'description', lang: 'en-GB' }
  // Letters as wide as they were measured, however large the picture is shown.
  const letters = { 'text-rendering': 'geometricPrecision' }
  const whole = { width, height, viewBox: `0 0 ${width} ${height}` }
  return {
    svg: tag('svg', { xmlns: 'http://www.w3.org/2000/svg', ...whole, ...about, ...letters }, inside.join('')),
    width,
    height,
  }
}
