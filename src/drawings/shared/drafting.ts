import { change, changeText, type Group, part, parts, px } from './svg.ts'

/** What figures share of a draughtsman's hand: hatchings, clips, numbered balloons and dimension lines. */

const add = (parent: Element, tag: string, attributes: Readonly<Record<string, string>>): Element => {
  const element = parent.ownerDocument.createElementNS('http://www.w3.org/2000/svg', tag)
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value)
  parent.appendChild(element)
  return element
}

/** The group that holds a figure's hatchings and clips. */
export const definitions = (root: Group): Group => part(root, 'g', 'definitions')

/** Hatchings for what is cut and for what is broken, with ids of their own for each picture on a page. */
export const drawHatchings = (root: Group, prefix: string): void => {
  const hatchings = parts(definitions(root), 'pattern', 'hatching', ['cut', 'broken'])
  change(hatchings, 'id', (name) => `${prefix}-${name}`)
  hatchings.each(function (name) {
    if (this.firstChild) return
    for (const [key, value] of Object.entries({
      width: '5',
      height: '5',
      patternUnits: 'userSpaceOnUse',
      patternTransform: `rotate(${name === 'cut' ? 45 : -45})`,
    }))
      this.setAttribute(key, value)
    add(this, 'rect', { class: 'hatch-ground', width: '5', height: '5' })
    add(this, 'path', { class: `hatch-${name}`, d: 'M0,0V5' })
  })
}

/** A rectangle in the picture's pixels. */
export interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** A clip of this name: only what lies in the box is seen. Returns its reference. */
export const drawClip = (root: Group, prefix: string, name: string, box: Box): string => {
  const clip = part(definitions(root), 'clipPath', `${name}-clip`)
  change(clip, 'id', () => `${prefix}-${name}`)
  const shape = clip.selectChildren<SVGRectElement, null>('rect').data([null]).join('rect')
  change(shape, 'x', () => px(box.x))
  change(shape, 'y', () => px(box.y))
  change(shape, 'width', () => px(Math.max(0, box.width)))
  change(shape, 'height', () => px(Math.max(0, box.height)))
  return `url(#${prefix}-${name})`
}

/** A numbered balloon: a part keeps its number through the whole site. */
export interface Balloon {
  readonly number: number
  readonly x: number
  readonly y: number
  /** Where its leader line ends, if it has one. */
  readonly to?: readonly [number, number]
}

const radius = 9.5

/** A leader from the rim of a balloon to its part. */
const leader = ({ x, y, to }: Balloon): string => {
  if (!to) return ''
  const length = Math.hypot(to[0] - x, to[1] - y)
  if (length <= radius) return ''
  const share = radius / length
  return `M${px(x + (to[0] - x) * share)},${px(y + (to[1] - y) * share)}L${px(to[0])},${px(to[1])}`
}

/** A full circle as a piece of a path. */
export const ring = (x: number, y: number, r: number): string =>
  `M${px(x - r)},${px(y)}a${r},${r} 0 1 0 ${px(2 * r)},0a${r},${r} 0 1 0 ${px(-2 * r)},0Z`

/** A rectangle in words of a path, from the middle of its upper side, in pixels. */
export const rectangle = (
  x: number,
  y: number,
  { wide, tall }: { readonly wide: number; readonly tall: number },
): string => `M${px(x - wide / 2)},${px(y)}h${wide}v${tall}h${-wide}Z`

/** Balloons with their leader lines, in a group of their own. */
export const drawBalloons = (parent: Group, all: readonly Balloon[]): void => {
  const group = part(parent, 'g', 'balloons')
  change(part(group, 'path', 'leader'), 'd', () => all.map(leader).join(''))
  const ends = all.flatMap(({ to }) => (to ? [ring(to[0], to[1], 1.8)] : []))
  change(part(group, 'path', 'leader-end'), 'd', () => ends.join(''))
  const balloons = parts(part(group, 'g', 'balloon-heads'), 'g', 'balloon', all)
  balloons.each(function () {
    if (this.firstChild) return
    add(this, 'circle', { r: String(radius) })
    add(this, 'text', { y: '4.2' })
  })
  change(balloons, 'transform', ({ x, y }) => `translate(${px(x)} ${px(y)})`)
  balloons.each(function ({ number }) {
    const text = this.lastElementChild
    if (text && text.textContent !== String(number)) text.textContent = String(number)
  })
}

/** The two arrow heads and the line of a dimension between two points, upright or level. */
export const dimensionLine = (x1: number, y1: number, x2: number, y2: number): string => {
  const length = Math.hypot(x2 - x1, y2 - y1)
  if (length < 0.5) return ''
  const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length]
  const head = (x: number, y: number, side: 1 | -1): string => {
    const [bx, by] = [x + side * ux * 6, y + side * uy * 6]
    return `M${px(bx - uy * 2.2)},${px(by + ux * 2.2)}L${px(x)},${px(y)}L${px(bx + uy * 2.2)},${px(by - ux * 2.2)}`
  }
  const line = `M${px(x1)},${px(y1)}L${px(x2)},${px(y2)}`
  // Where the arrows do not fit between the points they stand outside and point inwards.
  return length >= 15
    ? `${line}${head(x1, y1, 1)}${head(x2, y2, -1)}`
    : `M${px(x1 - ux * 12)},${px(y1 - uy * 12)}L${px(x2 + ux * 12)},${px(y2 + uy * 12)}${head(x1, y1, -1)}${head(x2, y2, 1)}`
}

/** A line of text at a place of the picture. */
export interface Label {
  readonly text: string
  readonly x: number
  readonly y: number
  /** What the styles go by, such as 'strong'. */
  readonly look?: string
}

/** Lines of text, in a group of their own. */
export const drawTexts = (parent: Group, name: string, all: readonly Label[]): void => {
  const texts = parts(part(parent, 'g', name), 'text', 'label', all)
  change(texts, 'x', ({ x }) => px(x))
  change(texts, 'y', ({ y }) => px(y))
  change(texts, 'data-look', ({ look }) => look ?? '')
  changeText(texts, ({ text }) => text)
}
