import { change, type Group, part, parts } from '../svg.ts'

/** A part of the picture outside which nothing of a group is shown. */
export interface Window {
  readonly name: string
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

const child = (parent: Element, tag: string, attributes: Readonly<Record<string, string>>): void => {
  const element = parent.ownerDocument.createElementNS('http://www.w3.org/2000/svg', tag)
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value)
  parent.appendChild(element)
}

/** The hatchings of cut and of broken parts, and the windows' clips, with ids of their own for each picture on a page. */
export const drawDefinitions = (root: Group, prefix: string, windows: readonly Window[]): void => {
  const group = part(root, 'g', 'definitions')
  const hatchings = parts(group, 'pattern', 'hatching', ['cut', 'broken'])
  change(hatchings, 'id', (name) => `${prefix}-${name}`)
  hatchings
    .attr('width', 5)
    .attr('height', 5)
    .attr('patternUnits', 'userSpaceOnUse')
    .attr('patternTransform', 'rotate(45)')
  hatchings.each(function (name) {
    if (this.firstChild) return
    child(this, 'rect', { class: 'hatch-ground', width: '5', height: '5' })
    child(this, 'path', { class: `hatch-${name}`, d: 'M0,0V5' })
  })
  const clips = parts(group, 'clipPath', 'window', windows)
  change(clips, 'id', ({ name }) => `${prefix}-${name}`)
  clips.each(function ({ left, top, width, height }) {
    if (this.firstChild) return
    child(this, 'rect', { x: `${left}`, y: `${top}`, width: `${width}`, height: `${height}` })
  })
}
