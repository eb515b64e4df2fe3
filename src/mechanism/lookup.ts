/**
 * Entry `index` (from 0) of a list or a typed array.
 * Throws a RangeError where there is none: a wrong index is a mistake in the program and must not pass as a default.
 */
export const at = <Entry>(list: ArrayLike<Entry>, index: number): Entry => {
  const found = list[index]
  if (found === undefined) throw new RangeError(`there is no entry ${index} in a list of ${list.length}`)
  return found
}

/**
 * Entry `index` (from 0) of a list of measures. It and `markAt` each read one kind of list only, which the model's
 * innermost loops need to be quick. Throws a RangeError where there is none.
 */
export const measureAt = (list: Float64Array, index: number): number => {
  const found = list[index]
  return found === undefined ? at(list, index) : found
}

/** Entry `index` (from 0) of a list of marks. Throws a RangeError where there is none. */
export const markAt = (list: Uint8Array, index: number): number => {
  const found = list[index]
  return found === undefined ? at(list, index) : found
}

/** The last entry of a list. Throws a RangeError where the list is empty. */
export const lastOf = <Entry>(list: ArrayLike<Entry>): Entry => at(list, list.length - 1)

/** The value of a map under `key`. Throws a RangeError where the map has none. */
export const entry = <Key, Value>(map: ReadonlyMap<Key, Value>, key: Key): Value => {
  const found = map.get(key)
  if (found === undefined) throw new RangeError(`there is no entry “${String(key)}” in a map of ${map.size}`)
  return found
}
