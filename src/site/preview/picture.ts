import { bedSizes, type BedSeen, drawBed } from '../../drawings/bed/bed.ts'
import { withoutDefaults } from '../drawn-markup.ts'
import { broken, emptySheet, fittingSize, previewSize } from './sheet.ts'

/** What a page's preview picture says and shows. */
export interface Preview {
  readonly title: string
  readonly shows: string
  readonly bed: BedSeen
}

const titleSizes = [68, 62, 56, 50, 46]
const showsSize = 36

/** What the wide drawing leaves free at either side of the bed, in its own pixels. */
const inset = 18

/**
 * A preview picture as SVG: the site's name small, the title and what one sees large, the bed below. Throws where a text
 * is too long for its place.
 */
export const previewPicture = async ({ title, shows, bed }: Preview): Promise<string> => {
  const { width, height, margin } = previewSize
  const { svg, add, write } = emptySheet()
  add('rect', { class: 'ground', width, height })
  write({ text: 'Every Eighth Needle', look: 'site', size: 27, y: 62 })
  const size = await fittingSize(title, 'title', titleSizes)
  write({ text: title, look: 'title', size, y: 140 })
  const lines = await broken(shows, 'shows', showsSize)
  if (lines.length > 2) throw new Error(`“${shows}” is too long for two lines of its preview picture`)
  for (const [n, text] of lines.entries())
    write({ text, look: 'shows', size: showsSize, y: 198 + n * showsSize * 1.2 })

  const bedWidth = bedSizes.wide.width - 2 * inset
  const bedHeight = ((width - 2 * margin) * bedSizes.wide.height) / bedWidth
  const drawing = add('svg', {
    x: margin,
    y: height - 22 - bedHeight,
    width: width - 2 * margin,
    height: bedHeight,
    overflow: 'visible',
  })
  drawBed(drawing as SVGSVGElement, bed, { shape: 'wide' })
  // The bed itself, without the room beside it, is as wide as the text may be.
  drawing.setAttribute('viewBox', `${inset} 0 ${bedWidth} ${bedSizes.wide.height}`)
  return withoutDefaults(svg.outerHTML)
}
