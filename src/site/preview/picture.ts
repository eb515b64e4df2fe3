import type { Run } from '../../mechanism/pass.ts'
import { withoutDefaults } from '../drawn-markup.ts'
import { clothFile } from './cloth.ts'
import { flattened } from './flat-styles.ts'
import { broken, emptySheet, previewSize, type Sheet } from './sheet.ts'

/** What a page's preview picture says and shows. */
export interface Preview {
  readonly title: string
  readonly shows: string
  /** The part of the machine, as an SVG file with its styles in it. */
  readonly part: string
  /** How many times as close the part is looked at as its file shows it; what matters is in the middle. */
  readonly closer: number
  /** The machine that knits the cloth, and the pass after which it is looked at. */
  readonly run: Run
  readonly pass: number
}

/** Styles for a part that is drawn small: fine lines close together would make a grey, and a large file. */
export const withoutFineLines =
  '.scene-machine :is(.l-hatching, .l-wrong, .l-crease, .l-mark) { display: none; }'

/** How high the words and the part are, above the cloth; how wide the words may be, and where the part is, in pixels. */
const top = { height: 198, words: 256, part: { x: 290, width: previewSize.width - 290 } } as const

/** The sizes of the two kinds of text, the largest that fits; the lines' distance as a share of it. */
const sizes = { title: [34, 31, 28, 25, 22.5], shows: [19, 17, 15.5, 14] } as const
const leading = 1.14

const inline = (svg: string): string => `data:image/svg+xml;base64,${Buffer.from(svg).toString('base64')}`

/** Writes a text in lines from this height, in pixels, at the largest size at which it ends above `end`; gives its foot. */
const writeLines = async (
  { write }: Sheet,
  text: string,
  look: 'title' | 'shows',
  { y, end }: { readonly y: number; readonly end: number },
): Promise<number> => {
  for (const size of sizes[look]) {
    const lines = await broken(text, look, size, top.words)
    const baseLine = (n: number): number => Math.round(y + size * (0.8 + leading * n))
    const foot = baseLine(lines.length - 1) + size * 0.25
    if (foot > end) continue
    for (const [n, line] of lines.entries()) write({ text: line, look, size, y: baseLine(n) })
    return foot
  }
  throw new Error(`“${text}” is too long for its place in the preview picture`)
}

/**
 * A preview picture as SVG: the title and what one sees large, beside them the part, below them the cloth that it knits.
 * Throws where a text is too long for its place.
 */
export const previewPicture = async ({ title, shows, part, closer, run, pass }: Preview): Promise<string> => {
  const { width, height } = previewSize
  const sheet = emptySheet()
  const { svg, add, write } = sheet
  add('rect', { class: 'ground', width, height })
  write({ text: 'Every Eighth Needle', look: 'site', size: 14, y: 28 })
  const foot = await writeLines(sheet, title, 'title', { y: 40, end: 143 })
  await writeLines(sheet, shows, 'shows', { y: foot + 6, end: top.height })
  add('clipPath', { id: 'part' }).append(add('rect', { ...top.part, height: top.height }))
  const [wide, high] = [top.part.width * closer, top.height * closer]
  add('image', {
    x: top.part.x - (wide - top.part.width) / 2,
    y: -(high - top.height) / 2,
    width: wide,
    height: high,
    href: inline(flattened(part)),
    preserveAspectRatio: 'xMidYMid slice',
    'clip-path': 'url(#part)',
  })
  const cloth = clothFile(run, pass)
  add('rect', { class: 'table', y: top.height, width, height: height - top.height })
  add('image', {
    x: Math.round((width - cloth.width) / 2),
    y: top.height + 2,
    width: cloth.width,
    height: cloth.height,
    href: inline(cloth.svg),
  })
  return withoutDefaults(svg.outerHTML)
}
