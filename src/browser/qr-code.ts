import { correction, generate } from 'lean-qr/nano'
import { toSvgPath } from 'lean-qr/extras/svg'
import { reachOf, shareable } from './share.ts'

/** Blank modules round a code, by ISO/IEC 18004. */
const quietZone = 4

/** The longest link, in bytes, whose code an ordinary phone reads at once. */
const easyBytes = 300

/**
 * What came of drawing a code: how well a phone will read it; that it leads to this device while it serves the site; or
 * that there is none, as the link is too long for any or leads to a file on this device.
 */
export type CodeResult = 'easy' | 'dense' | 'this device' | 'too long' | 'only here'

const make = (svg: SVGSVGElement, tag: string, attributes: Readonly<Record<string, string>>): Element => {
  const element = svg.ownerDocument.createElementNS('http://www.w3.org/2000/svg', tag)
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value)
  return element
}

const codeOf = (link: string): ReturnType<typeof generate> | null => {
  try {
    return generate(link, { minCorrectionLevel: correction.M })
  } catch {
    return null
  }
}

/** Draws a link as a QR code of level M or better, black on white whatever the page's colours. Empties it where there is none. */
export const drawCode = (svg: SVGSVGElement, link: string): CodeResult => {
  const shared = shareable(link)
  const reach = reachOf(shared)
  const code = reach === 'files' ? null : codeOf(shared)
  if (!code) {
    svg.replaceChildren()
    return reach === 'files' ? 'only here' : 'too long'
  }
  const size = String(code.size + 2 * quietZone)
  svg.setAttribute('viewBox', `0 0 ${size} ${size}`)
  svg.setAttribute('shape-rendering', 'crispEdges')
  svg.replaceChildren(
    make(svg, 'rect', { width: size, height: size, fill: '#fff' }),
    make(svg, 'path', {
      d: toSvgPath(code),
      fill: '#000',
      transform: `translate(${quietZone} ${quietZone})`,
    }),
  )
  if (reach === 'this device') return reach
  return new TextEncoder().encode(shared).length > easyBytes ? 'dense' : 'easy'
}

/** A drawn code as a file of its own, with a size in mm for whoever prints it. */
export const codeFile = (svg: SVGSVGElement): string => {
  const copy = make(svg, 'svg', {
    viewBox: svg.getAttribute('viewBox') ?? '',
    width: '50mm',
    height: '50mm',
    'shape-rendering': 'crispEdges',
  })
  copy.append(...[...svg.children].map((child) => child.cloneNode(true)))
  return new XMLSerializer().serializeToString(copy)
}
