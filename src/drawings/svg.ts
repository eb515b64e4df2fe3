import type { BaseType, Selection } from 'd3'

/** A selection of one kind of SVG element under any parent. */
export type Drawn<Element extends BaseType, Datum> = Selection<Element, Datum, BaseType, unknown>

/** A group that is drawn into. */
export type Group = Drawn<SVGGElement, null>

/** A coordinate or length as it is written: to a tenth of a pixel, so that pages and snapshots stay small. */
export const px = (value: number): number => Math.round(value * 10) / 10 + 0

/** Sets an attribute where it differs from what stands there: unchanged elements cost no repaint. */
export const change = <E extends Element, D>(
  selection: Drawn<E, D>,
  name: string,
  value: (datum: D, index: number) => string | number,
): void => {
  selection.each(function (datum, index) {
    const text = String(value(datum, index))
    if (this.getAttribute(name) !== text) this.setAttribute(name, text)
  })
}

/** Sets the text of labels where it differs. */
export const changeText = <E extends Element, D>(
  selection: Drawn<E, D>,
  value: (datum: D) => string,
): void => {
  selection.each(function (datum) {
    const text = value(datum)
    if (this.textContent !== text) this.textContent = text
  })
}

/** The child of this tag and class, made where it is missing: drawing twice gives the same elements. */
export const part = <Tag extends keyof SVGElementTagNameMap>(
  parent: Group,
  tag: Tag,
  name: string,
): Drawn<SVGElementTagNameMap[Tag], null> => {
  const found = parent.selectChildren<SVGElementTagNameMap[Tag], null>(`.${name.split(' ').join('.')}`)
  return found.data([null]).join((enter) => enter.append<SVGElementTagNameMap[Tag]>(tag).attr('class', name))
}

/** One element for each datum, in order, made where it is missing. */
export const parts = <Tag extends keyof SVGElementTagNameMap, D>(
  parent: Group,
  tag: Tag,
  name: string,
  data: readonly D[],
): Drawn<SVGElementTagNameMap[Tag], D> =>
  parent
    .selectChildren<SVGElementTagNameMap[Tag], D>(`.${name}`)
    .data(data)
    .join((enter) => enter.append<SVGElementTagNameMap[Tag]>(tag).attr('class', name))

/** A closed outline through these points. */
export const outline = (points: readonly (readonly [number, number])[]): string =>
  `M${points.map(([x, y]) => `${px(x)},${px(y)}`).join('L')}Z`

/** An open line through these points. */
export const polyline = (points: readonly (readonly [number, number])[]): string =>
  points.length === 0 ? '' : `M${points.map(([x, y]) => `${px(x)},${px(y)}`).join('L')}`
