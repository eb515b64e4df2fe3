import { type BaseType, select, selectAll, type Selection } from 'd3'

/** A selection of one kind of SVG element under any parent. */
export type Drawn<Element extends BaseType, Datum> = Selection<Element, Datum, BaseType, unknown>

/** A group that is drawn into. */
export type Group = Drawn<SVGGElement, null>

/** The kinds of shape that a picture is made of. */
type Tag = 'circle' | 'clipPath' | 'g' | 'path' | 'pattern' | 'rect' | 'text'

/** Every attribute that a shape can have; the styles go by those that begin with "data-". */
type AttributeName =
  | 'class'
  | 'clip-path'
  | 'cx'
  | 'cy'
  | 'd'
  | 'display'
  | 'fill'
  | 'font-size'
  | 'height'
  | 'id'
  | 'patternTransform'
  | 'patternUnits'
  | 'r'
  | 'rx'
  | 'stroke-dasharray'
  | 'stroke-dashoffset'
  | 'stroke-width'
  | 'text-anchor'
  | 'transform'
  | 'viewBox'
  | 'width'
  | 'x'
  | 'y'
  | `data-${string}`

/** A value that takes long to compute: it is computed only where its key is not the one of last time. */
interface Keyed {
  readonly key: string | number
  readonly value: () => string
}

/** What is written of one shape: its attributes, in this order, and the words of a text. */
export type Attributes = Readonly<Partial<Record<AttributeName | 'text', string | number | Keyed>>>

/**
 * The value of an attribute that takes long to compute. The key covers all that the value depends on, but for the
 * layout, which an element never changes.
 */
export const keyed = (key: string | number, value: () => string): Keyed => ({ key, value })

/** One key for two lengths or angles, the second much less than a thousand. */
export const keyOf = (one: number, other: number): number => one * 1000 + other

/**
 * Where an element keeps what was last written to it, by attribute: reading it from the document takes several times as
 * long, and every picture does so some thousands of times.
 */
const written = Symbol('written')
type Written = Element & { [written]?: Record<string, string | number | undefined> | undefined }

/**
 * Sets an attribute of one element where it differs from what is there: unchanged elements cost no repaint. An attribute
 * that is set here is set nowhere else.
 */
const writeAttribute = (element: Element, name: string, value: string | number): void => {
  const known = ((element as Written)[written] ??= {})
  const last = known[name]
  if (last === value) return
  known[name] = value
  const text = String(value)
  // The first time the built picture may have it already.
  if (last !== undefined || element.getAttribute(name) !== text) element.setAttribute(name, text)
}

/**
 * Sets the words of a text where they differ. The node that holds them is changed and not replaced: after a replacement
 * the browser would recompute styles for everything whose style depends on what a page holds.
 */
const writeText = (element: Element, text: string): void => {
  const { firstChild } = element
  if ((firstChild?.nodeValue ?? '') === text) return
  if (firstChild && text !== '') firstChild.nodeValue = text
  else element.textContent = text
}

/** Where an element keeps the keys of its last values, by attribute. */
const keysKept = Symbol('keys')
type Keeping = Element & { [keysKept]?: Record<string, string | number | undefined> | undefined }

const writeKeyed = (element: Element, name: string, { key, value }: Keyed): void => {
  const known = ((element as Keeping)[keysKept] ??= {})
  if (known[name] === key) return
  known[name] = key
  writeAttribute(element, name, value())
}

const writeAll = (element: Element, attributes: Attributes): void => {
  for (const name in attributes) {
    const value = attributes[name as keyof Attributes]
    if (value === undefined) continue
    if (typeof value === 'object') writeKeyed(element, name, value)
    else if (name === 'text') writeText(element, String(value))
    else writeAttribute(element, name, value)
  }
}

/** Writes these attributes of each shape, as far as they have changed. */
export const write = <E extends Element, D>(
  drawn: Drawn<E, D>,
  attributesOf: (datum: D, index: number) => Attributes,
): void => {
  drawn.each(function (datum, index) {
    writeAll(this, attributesOf(datum, index))
  })
}

/** Gives a picture the size of its layout, and where it is a figure of its own, that figure's name. */
export const setSize = (
  svg: SVGSVGElement,
  { width, height }: { readonly width: number; readonly height: number },
  figure?: string,
): void => {
  writeAttribute(svg, 'viewBox', `0 0 ${width} ${height}`)
  if (figure !== undefined) writeAttribute(svg, 'data-figure', figure)
}

/**
 * The elements that were made under a parent, by class: a drawing's own children need not be looked for at every
 * drawing. Nothing but what is in the picture is kept, and it goes with the picture.
 */
const made = new WeakMap<Element, Map<string, Element[]>>()

/** An element as D3 keeps it. */
type Bound = Element & { __data__?: unknown }

/**
 * One element for each datum, in order, made where it is missing: drawing twice gives the same elements. They are found
 * by their class; without one, by their tag.
 */
const join = <T extends Tag, D>(
  parent: Group,
  tag: T,
  className: string | null,
  data: readonly D[],
): Drawn<SVGElementTagNameMap[T], D> => {
  const node = parent.node()
  const key = className ?? `<${tag}>`
  const known = node && made.get(node)?.get(key)
  // They come and go together, so the last one is enough: looking at each is slow.
  const last = known?.at(-1)
  const isThere = known?.length === data.length && (last === undefined || last.parentNode === node)
  if (isThere) {
    // D3 keeps an element's datum under this name; its own "datum" would drop a datum that is null.
    for (let n = 0; n < known.length; n++) (known[n] as Bound).__data__ = data[n]
    return selectAll<SVGElementTagNameMap[T], D>(known as SVGElementTagNameMap[T][])
  }
  const selector = className === null ? tag : `.${className.split(' ').join('.')}`
  const joined = parent
    .selectChildren<SVGElementTagNameMap[T], D>(selector)
    .data(data)
    .join((enter) => {
      const added = enter.append<SVGElementTagNameMap[T]>(tag)
      return className === null ? added : added.attr('class', className)
    })
  if (node) {
    const names = made.get(node) ?? new Map<string, Element[]>()
    made.set(node, names.set(key, joined.nodes()))
  }
  return joined
}

/** Draws one shape of this class for each datum, in order, under a parent. */
export const drawShapes = <T extends Tag, D>(
  parent: Group,
  tag: T,
  className: string,
  data: readonly D[],
  attributesOf: (datum: D, index: number) => Attributes,
): Drawn<SVGElementTagNameMap[T], D> => {
  const drawn = join(parent, tag, className, data)
  write(drawn, attributesOf)
  return drawn
}

/** As `drawShapes`, for shapes that have no class of their own, or each another; all children of this tag. */
export const drawList = <T extends Tag, D>(
  parent: Group,
  tag: T,
  data: readonly D[],
  attributesOf: (datum: D, index: number) => Attributes,
): Drawn<SVGElementTagNameMap[T], D> => {
  const drawn = join(parent, tag, null, data)
  write(drawn, attributesOf)
  return drawn
}

/** Draws one shape of this class under a parent. */
export const drawShape = <T extends Tag>(
  parent: Group,
  tag: T,
  className: string,
  attributes: Attributes,
): Drawn<SVGElementTagNameMap[T], null> => drawShapes(parent, tag, className, [null], () => attributes)

/** The group of this class under a parent. */
export const drawGroup = (parent: Group, className: string, attributes: Attributes = {}): Group =>
  drawShape(parent, 'g', className, attributes)

/** An element that shapes are drawn into as into a group: a picture, a pattern, a clip, one group of several. */
export const into = (element: SVGElement): Group => select(element as SVGGElement) as unknown as Group
