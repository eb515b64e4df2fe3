import { escaped } from '../shared/xml.ts'
import type { LineLook, SheetShape, SheetPage } from './punch-sheet.ts'

/** A stranger's text with spaces for the characters that XML forbids, and for its line ends. */
const spaced = (text: string): string => text.replace(/[\p{Cc}\p{Cs}]/gu, ' ')

/** To a thousandth of a millimetre. */
const mm = (value: number): string => String(Math.round(value * 1000) / 1000)

/** Line widths in mm, and dashes. */
const strokes: Record<LineLook, string> = {
  cut: 'stroke-width="0.3"',
  join: 'stroke-width="0.25" stroke-dasharray="3 2"',
  thin: 'stroke-width="0.12"',
  ruler: 'stroke-width="0.25"',
}

const shapeText = (shape: SheetShape): string => {
  switch (shape.kind) {
    case 'circle': {
      const place = `cx="${mm(shape.x)}" cy="${mm(shape.y)}" r="${mm(shape.radius)}"`
      return shape.look === 'hole'
        ? `<circle ${place} fill="none" stroke="#000" stroke-width="0.25"/>`
        : `<circle ${place}/>`
    }
    case 'line': {
      const place = `x1="${mm(shape.x1)}" y1="${mm(shape.y1)}" x2="${mm(shape.x2)}" y2="${mm(shape.y2)}"`
      return `<line ${place} stroke="#000" ${strokes[shape.look]}/>`
    }
    case 'text': {
      const place = `x="${mm(shape.x)}" y="${mm(shape.y)}" font-size="${mm(shape.size)}" text-anchor="${shape.anchor}"`
      return `<text ${place}>${escaped(spaced(shape.text))}</text>`
    }
  }
}

/**
 * A page of the sheet as the text of an SVG file, at its true size; of a page whose margin the paper has already, without
 * that margin in mm.
 */
export const sheetSvg = ({ width, height, shapes }: SheetPage, margin = 0): string => {
  const [across, down] = [width - 2 * margin, height - 2 * margin]
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(across)}mm" height="${mm(down)}mm" viewBox="${margin} ${margin} ${mm(across)} ${mm(down)}" font-family="Helvetica, Arial, sans-serif">`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    ...shapes.map(shapeText),
    '</svg>\n',
  ].join('\n')
}
