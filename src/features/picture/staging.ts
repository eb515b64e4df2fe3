import { element } from '../../browser/dom.ts'
import type { StyleOf } from './resolved.ts'
import type { Scheme } from './scheme.ts'
import { sheetIn } from './sheet.ts'

/** Colours of what is written round a drawing. */
export interface Inks {
  readonly paper: string
  readonly ink: string
  readonly soft: string
}

/** A place beside the page in which a drawing has the drawings' styles in one scheme, and nothing of the page's. */
export interface Staging {
  readonly inks: Inks
  readonly styleOf: StyleOf
  readonly remove: () => void
}

/** The smallest letters of a saved picture, in its own pixels: it is often shown smaller than it is. */
const least = '14px'

/** Puts a drawing, as wide as its own pixels, into such a place. */
export const staged = (svg: SVGSVGElement, width: number, scheme: Scheme): Staging => {
  const style = `all: initial; position: fixed; left: -99999px; width: ${width}px; forced-color-adjust: none`
  const host = element('div', { style, inert: '', 'aria-hidden': 'true' })
  const root = host.attachShadow({ mode: 'closed' })
  root.adoptedStyleSheets = [sheetIn(scheme)]
  svg.style.setProperty('--least', least)
  root.append(svg)
  document.body.append(host)
  const computed = getComputedStyle(host)
  const token = (name: string): string => computed.getPropertyValue(`--${name}`).trim()
  return {
    inks: { paper: token('paper'), ink: token('ink'), soft: token('soft') },
    styleOf: (styled) => {
      const values = getComputedStyle(styled)
      return (property) => values.getPropertyValue(property)
    },
    remove: () => {
      host.remove()
    },
  }
}
