import { type Composed, composed, type Words } from './composed.ts'
import { fontRules, typeface } from './fonts.ts'
import type { Measure } from './lines.ts'
import type { MachineDrawing, MachineShown } from './machine-drawing.ts'
import { withTexts } from './png-text.ts'
import { emptySheet, pngOf } from './raster.ts'
import { createWriter } from './resolved.ts'
import type { Scheme } from './scheme.ts'
import { staged } from './staging.ts'

/** A drawing of the page or of its own, with its size in its own pixels and the words that belong to it. */
export interface Seen {
  /** Is moved out of where it is: a drawing that a page shows is given as a copy. */
  readonly svg: SVGSVGElement
  readonly width: number
  readonly height: number
  readonly title: string
  /** What it shows, for who does not see it: the alternative text. */
  readonly description: string
  /** What happens in it, to be written under it. */
  readonly sentence: string
  /** The link to what it shows. */
  readonly address: string
  /** What its file is called. */
  readonly name: string
  /** The machine that it is drawn from; null for a copy, of which there is no film. */
  readonly machine: { readonly shown: MachineShown; readonly drawing: MachineDrawing } | null
}

/** What a person chooses about a picture. */
export interface PictureOptions {
  readonly kind: 'svg' | 'png'
  /** Width of a PNG in pixels. */
  readonly pixels: number
  readonly scheme: Scheme
  /** Whether the sentence and the address are under it. */
  readonly sentence: boolean
  readonly address: boolean
}

/** Measures words in the pictures' typeface, once that is here. */
const measureAt = (): ((size: number) => Measure) => {
  const { pen } = emptySheet(1, 1)
  return (size) => (words) => {
    pen.font = `500 ${size}px ${typeface}`
    return pen.measureText(words).width
  }
}

/** What all pictures are written in, but for their colours: their typeface, once it is here, and how wide words are in it. */
export const lettering = async (): Promise<{
  readonly typeface: string
  readonly fontRules: string
  readonly measureAt: (size: number) => Measure
}> => {
  await Promise.all([500, 600].map((weight) => document.fonts.load(`${weight} 16px ${typeface}`)))
  return { typeface, fontRules, measureAt: measureAt() }
}

/** A drawing on paper in a scheme with these words, as the text of an SVG file. */
const compose = async (
  { svg, width, height }: Pick<Seen, 'svg' | 'width' | 'height'>,
  words: Words,
  scheme: Scheme,
): Promise<Composed> => {
  const letters = await lettering()
  const { styleOf, inks, remove } = staged(svg, width, scheme)
  try {
    const markup = createWriter(styleOf)(svg)
    return composed({ markup, width, height }, words, { ...letters, inks })
  } finally {
    remove()
  }
}

/** A picture as SVG text with the words that were chosen, and as those who only show it take it. */
export const composedPicture = (
  seen: Seen,
  { scheme, sentence, address }: PictureOptions,
): Promise<Composed> =>
  compose(
    seen,
    {
      title: seen.title,
      description: seen.description,
      sentence: sentence ? seen.sentence : '',
      address: address ? seen.address : '',
    },
    scheme,
  )

/**
 * A drawing as the file of a picture, with its description in it: an SVG that needs nothing else, or a PNG.
 * Throws where the browser draws on no canvas of that size.
 */
export const pictureOf = async (seen: Seen, options: PictureOptions): Promise<Blob> => {
  const picture = await composedPicture(seen, options)
  return options.kind === 'svg'
    ? new Blob([picture.svg], { type: 'image/svg+xml' })
    : withTexts(await pngOf(picture, options.pixels), { Title: seen.title, Description: seen.description })
}
