import type { Tree } from './tree.ts'

/** How finely the planes are written: to a ten-thousandth of a mm. */
const fine = 1e4

/** A tree as text for a page: each plane as its axis and place, then what is before it, then what is beyond; a leaf is a dot. */
export const writeTree = (tree: Tree): string =>
  tree === null
    ? '.'
    : `${tree.plane.axis}${Math.round(tree.plane.at * fine) / fine},${writeTree(tree.before)},${writeTree(tree.beyond)}`

/** Reads a tree as `writeTree` writes it. Throws a RangeError where a text is none. */
export const readTree = (text: string): Tree => {
  const words = text.split(',')
  let next = 0
  const grow = (): Tree => {
    const word = words[next++]
    if (word === '.') return null
    const axis = Number(word?.charAt(0))
    const at = Number(word?.slice(1))
    if (!word || (axis !== 0 && axis !== 1 && axis !== 2) || Number.isNaN(at))
      throw new RangeError(`“${word ?? ''}” is no plane of a tree`)
    return { plane: { axis, at }, before: grow(), beyond: grow() }
  }
  const tree = grow()
  if (next !== words.length) throw new RangeError('the text goes on after its tree')
  return tree
}
