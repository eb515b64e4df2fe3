import { type Drawn, put } from './svg.ts'

/** Where an element keeps what was last asked of it by `isStale`, and by attribute the keys of `changeBy`. */
const reasonsKept = Symbol('reasons')
const keysKept = Symbol('keys')
type Remembering = Element & {
  [reasonsKept]?: readonly unknown[]
  [keysKept]?: Record<string, string | number | undefined>
}

/**
 * As `put`, for a value that takes long to write: it is written only where its key is not the one of last time. The key
 * stands for all that the value depends on, but for the layout, which an element never changes.
 */
export const putBy = (
  element: Remembering,
  name: string,
  key: string | number,
  value: () => string,
): void => {
  const known = (element[keysKept] ??= {})
  if (known[name] === key) return
  known[name] = key
  put(element, name, value())
}

/** Sets an attribute of each element, as `putBy` does. */
export const changeBy = <E extends Element, D>(
  selection: Drawn<E, D>,
  name: string,
  key: (datum: D) => string | number,
  value: (datum: D) => string,
): void => {
  selection.each(function (datum) {
    putBy(this, name, key(datum), () => value(datum))
  })
}

/** One key for two lengths or angles, the second much less than a thousand. */
export const keyOf = (one: number, other: number): number => one * 1000 + other

/**
 * Whether a part must be drawn anew: one of the things that it depends on is not what it was when this was last asked of
 * this element. One part asks for each element.
 */
export const isStale = <E extends SVGElement>(
  selection: Drawn<E, null>,
  reasons: readonly unknown[],
): boolean => {
  const node = selection.node() as Remembering | null
  const last = node?.[reasonsKept]
  if (last?.length === reasons.length && last.every((reason, n) => reason === reasons[n])) return false
  if (node) node[reasonsKept] = reasons
  return true
}
