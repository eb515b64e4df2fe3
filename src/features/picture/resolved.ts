import { escaped, tag } from '../../drawings/shared/xml.ts'
import { readColour } from './colour.ts'

/** The computed value of an element's property, by the property's name. */
export type StyleOf = (element: Element) => (property: string) => string

type Values = Readonly<Record<string, string>>

/** Properties that an element has from its parent, with what they are at first (SVG 2, property index). */
const inherited: Values = {
  fill: '#000000',
  'fill-opacity': '1',
  'fill-rule': 'nonzero',
  'font-family': '',
  'font-size': '',
  'font-weight': '400',
  'paint-order': 'normal',
  stroke: 'none',
  'stroke-dasharray': 'none',
  'stroke-dashoffset': '0',
  'stroke-linecap': 'butt',
  'stroke-linejoin': 'miter',
  'stroke-opacity': '1',
  'stroke-width': '1',
  'text-anchor': 'start',
  visibility: 'visible',
}

/** Properties that an element has for itself alone, with what they are unless something is said. */
const own: Values = { 'clip-path': 'none', opacity: '1' }

const properties = [...Object.keys(inherited), ...Object.keys(own), 'display']

/** Attributes that say where an element is and what it is called; all else comes from the styles. */
const geometry = new Set(
  `clipPathUnits cx cy d dx dy height id patternContentUnits patternTransform patternUnits points r rx ry transform
  viewBox width x x1 x2 y y1 y2`.split(/\s+/),
)

/** What is drawn or defined; anything else is left out. */
const kept = new Set(
  'circle clipPath defs ellipse g line path pattern polygon polyline rect svg text tspan'.split(' '),
)

/** A computed value as every program for pictures reads it: without units, and what it refers to by its id. */
const plain = (value: string): string =>
  value
    .replace(/url\(\s*["']?[^"')]*(#[^"')]+)["']?\s*\)/g, 'url($1)')
    .replace(/(\d)px\b/g, '$1')
    .replaceAll(', ', ' ')

const valuesOf = (element: Element, styleOf: StyleOf): Values => {
  const style = styleOf(element)
  const values: Record<string, string> = {}
  for (const name of properties) values[name] = name === 'font-family' ? style(name) : plain(style(name))
  for (const name of ['fill', 'stroke']) {
    const colour = readColour(style(name))
    if (!colour) continue
    values[name] = colour.hex
    if (colour.cover < 1) values[`${name}-opacity`] = String(colour.cover * Number(values[`${name}-opacity`]))
  }
  return values
}

/** What decides an element's style beside its place in the picture: its tag and all that is no geometry. */
const lookOf = ({ tagName, attributes }: Element): string =>
  [
    tagName,
    ...[...attributes].filter(({ name }) => !geometry.has(name)).map(({ name, value }) => `${name}=${value}`),
  ].join('\n')

/** Writes what is in a picture, again and again as it changes; elements that look alike are asked for their style once. */
export type Writer = (picture: Element) => string

/**
 * Makes a writer of pictures as SVG without styles: each element has its looks as attributes, and nothing that is hidden,
 * runs, or is fetched from elsewhere.
 */
export const createWriter = (styleOf: StyleOf): Writer => {
  const numbers = new Map<string, number>()
  const known = new Map<number, Values>()
  const numberOf = (look: string): number => {
    const number = numbers.get(look) ?? numbers.size
    numbers.set(look, number)
    return number
  }
  const childrenOf = (parent: Element, key: number, values: Values): string => {
    const children = [...parent.children].filter(({ tagName }) => kept.has(tagName))
    const looks = children.map((child) => numberOf(`look ${lookOf(child)}`))
    // A style may go by what is beside an element.
    const among = numberOf(`among ${key} ${[...new Set(looks)].sort((one, other) => one - other).join(' ')}`)
    return children.map((child, n) => write(child, numberOf(`at ${among} ${looks[n] ?? 0}`), values)).join('')
  }
  const write = (element: Element, key: number, around: Values): string => {
    const values = known.get(key) ?? valuesOf(element, styleOf)
    known.set(key, values)
    if (values['display'] === 'none') return ''
    const attributes: Record<string, string> = {}
    for (const { name, value } of element.attributes)
      if (geometry.has(name) && value !== '') attributes[name] = value
    for (const name of Object.keys(inherited))
      if (values[name] !== undefined && values[name] !== around[name]) attributes[name] = values[name]
    for (const [name, usual] of Object.entries(own))
      if (values[name] !== undefined && values[name] !== usual) attributes[name] = values[name]
    const isWords = /^t(?:ext|span)$/.test(element.tagName) && element.children.length === 0
    const words = isWords ? escaped(element.textContent) : ''
    if (isWords && words === '') return ''
    return tag(element.tagName, attributes, words + childrenOf(element, key, values))
  }
  return (picture) => {
    const key = numberOf(`look ${lookOf(picture)}`)
    return childrenOf(picture, key, inherited)
  }
}
