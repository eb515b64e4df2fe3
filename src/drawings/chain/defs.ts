import { change, type Group, part, parts } from '../shared/svg.ts'
import type { View } from './view.ts'

/** Hatchings and the window's clip, with ids of their own for each picture on a page. */
export const drawDefinitions = (root: Group, view: View): void => {
  const { layout, prefix } = view
  const defs = part(root, 'g', 'definitions')
  const hatchings = parts(defs, 'pattern', 'hatching', ['cut', 'broken'])
  change(hatchings, 'id', (name) => `${prefix}-${name}`)
  change(hatchings, 'width', () => 5)
  change(hatchings, 'height', () => 5)
  change(hatchings, 'patternUnits', () => 'userSpaceOnUse')
  change(hatchings, 'patternTransform', () => 'rotate(45)')
  hatchings.each(function (name) {
    if (this.firstChild) return
    for (const [tag, attributes] of [
      ['rect', { class: 'hatch-ground', width: '5', height: '5' }],
      ['path', { class: `hatch-${name}`, d: 'M0,0V5' }],
    ] as const) {
      const element = this.ownerDocument.createElementNS('http://www.w3.org/2000/svg', tag)
      for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value)
      this.appendChild(element)
    }
  })
  const clip = part(defs, 'clipPath', 'window-clip')
  change(clip, 'id', () => `${prefix}-window`)
  const box = part(clip as unknown as Group, 'rect', 'window-box')
  change(box, 'x', () => layout.left - layout.pitch * 0.4)
  change(box, 'y', () => 0)
  change(box, 'width', () => layout.needles * layout.pitch)
  change(box, 'height', () => layout.height)
}
