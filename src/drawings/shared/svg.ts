import { type BaseType, select, selectAll, type Selection } from 'd3'

/** A selection of one kind of SVG element under any parent. */
export type Drawn<Element extends BaseType, Datum> = Selection<Element, Datum, BaseType, unknown>

/** A group that is drawn into. */
export type Group = Drawn<SVGGElement, null>

/** A coordinate or length as it is written: to a tenth of a pixel, so that pages and snapshots stay small. */
export const px = (value: number): number => Math.round(value * 10) / 10 + 0

/**
 * Where an element keeps what was last written to it, by attribute: to ask the document costs several times as much, and
 * every picture asks for some thousands.
 */
const written = Symbol('written')
type Written = Element & { [written]?: Record<string, string | number | undefined> }

/**
 * Sets an attribute of one element where it differs from what stands there: unchanged elements cost no repaint. An
 * attribute that is set here is set nowhere else.
 */
export const put = (element: Element, name: string, value: string | number): void => {
  const known = ((element as Written)[written] ??= {})
  const last = known[name]
  if (last === value) return
  known[name] = value
  const text = String(value)
  // The first time the built picture may have it already.
  if (last !== undefined || element.getAttribute(name) !== text) element.setAttribute(name, text)
}

/** Sets an attribute of each element, as `put` does. */
export const change = <E extends Element, D>(
  selection: Drawn<E, D>,
  name: string,
  value: (datum: D, index: number) => string | number,
): void => {
  selection.each(function (datum, index) {
    put(this, name, value(datum, index))
  })
}

/** Sets an attribute that never changes; gives the selection back. */
export const keep = <E extends Element, D>(
  selection: Drawn<E, D>,
  name: string,
  value: string | number,
): Drawn<E, D> => {
  change(selection, name, () => value)
  return selection
}

/** Gives a picture the size of its layout, and where it is a figure of its own, that figure's name. */
export const setSize = (
  svg: SVGSVGElement,
  { width, height }: { readonly width: number; readonly height: number },
  figure?: string,
): void => {
  const picture = select<SVGSVGElement, unknown>(svg)
  keep(picture, 'viewBox', `0 0 ${width} ${height}`)
  if (figure !== undefined) keep(picture, 'data-figure', figure)
}

/**
 * Sets the text of labels where it differs. The text that stands there is changed and not put in another's place, after
 * which styles would be worked out anew for all that ask what a page holds.
 */
export const changeText = <E extends Element, D>(
  selection: Drawn<E, D>,
  value: (datum: D) => string,
): void => {
  selection.each(function (datum) {
    const text = value(datum)
    const { firstChild } = this
    if ((firstChild?.nodeValue ?? '') === text) return
    if (firstChild && text !== '') firstChild.nodeValue = text
    else this.textContent = text
  })
}

/**
 * The elements that were made under a parent, by class: a drawing's own children need not be looked for at every
 * drawing. Nothing but what stands in the picture is kept, and it goes with the picture.
 */
const made = new WeakMap<Element, Map<string, Element[]>>()

/** An element as D3 keeps it. */
type Bound = Element & { __data__?: unknown }

/** The child of this tag and class, made where it is missing: drawing twice gives the same elements. */
export const part = <Tag extends keyof SVGElementTagNameMap>(
  parent: Group,
  tag: Tag,
  name: string,
): Drawn<SVGElementTagNameMap[Tag], null> => parts(parent, tag, name, [null])

/** One element for each datum, in order, made where it is missing. */
export const parts = <Tag extends keyof SVGElementTagNameMap, D>(
  parent: Group,
  tag: Tag,
  name: string,
  data: readonly D[],
): Drawn<SVGElementTagNameMap[Tag], D> => {
  const node = parent.node()
  const known = node && made.get(node)?.get(name)
  // They come and go together, so the last one tells for all: to ask each is slow.
  const last = known?.at(-1)
  const isThere = known?.length === data.length && (last === undefined || last.parentNode === node)
  if (isThere) {
    // D3 keeps an element's datum under this name; its own "datum" would drop a datum that is null.
    for (let n = 0; n < known.length; n++) (known[n] as Bound).__data__ = data[n]
    return selectAll<SVGElementTagNameMap[Tag], D>(known as SVGElementTagNameMap[Tag][])
  }
  const joined = parent
    .selectChildren<SVGElementTagNameMap[Tag], D>(`.${name.split(' ').join('.')}`)
    .data(data)
    .join((enter) => enter.append<SVGElementTagNameMap[Tag]>(tag).attr('class', name))
  if (node) {
    const names = made.get(node) ?? new Map<string, Element[]>()
    made.set(node, names.set(name, joined.nodes()))
  }
  return joined
}

/** A closed outline through these points. */
export const outline = (points: readonly (readonly [number, number])[]): string =>
  `M${points.map(([x, y]) => `${px(x)},${px(y)}`).join('L')}Z`

/** An open line through these points. */
export const polyline = (points: readonly (readonly [number, number])[]): string =>
  points.length === 0 ? '' : `M${points.map(([x, y]) => `${px(x)},${px(y)}`).join('L')}`
