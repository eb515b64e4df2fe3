import { parseHTML } from 'linkedom'
import { type BedSeen, drawBed } from '../drawings/bed/bed.ts'
import type { Shape } from '../drawings/shared/figure-contract.ts'
import { slim } from './machine-state.ts'
import { short } from './minify-svg.ts'

/** The drawing of a bed as markup, for the page as it is built. */
export const builtBed = (bed: BedSeen, shape: Shape): string => {
  const { document } = parseHTML('<html><body></body></html>')
  const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg')
  drawBed(svg, bed, { shape })
  return short(slim(svg.innerHTML))
}
