import { parseHTML } from 'linkedom'

/** An empty document to draw in while the site is built, where there is no browser. */
export const emptyDocument = (): Document => parseHTML('<html><body></body></html>').document

/** An SVG element to draw in, in a document of its own. */
export const emptySvg = (): SVGSVGElement =>
  emptyDocument().createElementNS('http://www.w3.org/2000/svg', 'svg')

/** Markup without what a browser takes for granted: a drawing has some thousands of attributes that say nothing. */
export const withoutDefaults = (markup: string): string =>
  markup.replace(/ [\w-]+=""| display="inline"| (?=\/>)/g, '')

/** The inside of the SVG element that something is drawn in, as markup. */
export const drawnMarkup = (draw: (svg: SVGSVGElement) => void): string => {
  const svg = emptySvg()
  draw(svg)
  return withoutDefaults(svg.innerHTML)
}
