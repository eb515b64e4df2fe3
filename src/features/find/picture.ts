import { bedSizeOf, drawBed } from '../../drawings/bed/bed.ts'
import type { Shape } from '../../drawings/shared/figure-contract.ts'
import type { Outcome } from '../../mechanism/gate.ts'
import { wholeBedOf } from '../../mechanism/bed.ts'

/** An empty picture of a bed, to be drawn into. */
export const bedPicture = (label: string): SVGSVGElement => {
  const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg')
  svg.setAttribute('role', 'img')
  svg.setAttribute('aria-label', label)
  return svg
}

/** Makes a picture ready for a shape: the two shapes share no elements, so another's are taken out. */
export const takeShape = (svg: SVGSVGElement, shape: Shape): void => {
  if (svg.dataset.shape !== shape) svg.replaceChildren()
  svg.dataset.shape = shape
}

/** Draws the whole bed as it came out beside what was expected. */
export const drawWholeBed = (
  svg: SVGSVGElement,
  actual: readonly Outcome[],
  expected: readonly Outcome[],
  shape: Shape,
): void => {
  takeShape(svg, shape)
  const { width, height } = bedSizeOf(shape, actual.length)
  svg.style.aspectRatio = `${width} / ${height}`
  drawBed(svg, { came: actual, asked: expected, ...wholeBedOf(actual.length) }, { shape })
}
