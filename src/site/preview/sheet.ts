import { emptySvg } from '../drawn-markup.ts'
import { widthOf } from './renderer.ts'
import { previewStyles } from './styles.ts'

/** The preview pictures' size, which the places that show them ask for, and the margin at both sides, in pixels. */
export const previewSize = { width: 600, height: 315, margin: 24 } as const

/** A line of text of a preview picture: what it is, and its size and base line in pixels. */
export interface Line {
  readonly text: string
  readonly look: 'site' | 'title' | 'shows'
  readonly size: number
  readonly y: number
}

/** An empty preview picture with the styles in it, and what makes its elements. */
export interface Sheet {
  readonly svg: SVGElement
  readonly add: (tag: string, attributes: Readonly<Record<string, string | number>>) => SVGElement
  readonly write: (line: Line) => void
}

export const emptySheet = (): Sheet => {
  const svg = emptySvg()
  const add: Sheet['add'] = (tag, attributes) => {
    const element: SVGElement = svg.ownerDocument.createElementNS('http://www.w3.org/2000/svg', tag)
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, String(value))
    svg.append(element)
    return element
  }
  svg.setAttribute('xmlns', 'http://www.w3.org/2000/svg')
  svg.setAttribute('width', String(previewSize.width))
  svg.setAttribute('height', String(previewSize.height))
  add('style', {}).textContent = previewStyles
  const write: Sheet['write'] = ({ text, look, size, y }) => {
    add('text', { class: look, 'font-size': size, x: previewSize.margin, y }).textContent = text
  }
  return { svg, add, write }
}

/** Whether a text fits into this width on one line. */
const isOneLine = async (text: string, look: Line['look'], size: number, room: number): Promise<boolean> => {
  const { svg, write } = emptySheet()
  write({ text, look, size, y: previewSize.height / 2 })
  return (await widthOf(svg.outerHTML)) <= room
}

/** A text broken between words into lines that fit into a width, all in pixels. */
export const broken = async (
  text: string,
  look: Line['look'],
  size: number,
  room: number,
): Promise<string[]> => {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const longer = lines.length === 0 ? word : `${lines.at(-1) ?? ''} ${word}`
    if (lines.length > 0 && (await isOneLine(longer, look, size, room))) lines.splice(-1, 1, longer)
    else lines.push(word)
  }
  return lines
}
