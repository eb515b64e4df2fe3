import type { Drawn } from './svg.ts'

/** Where an element keeps the inputs that it was last drawn from. */
const inputsKept = Symbol('inputs')
type Remembering = SVGElement & { [inputsKept]?: readonly unknown[] }

/**
 * Whether one of the inputs from which a part is drawn is not what it was in the last call for this element: then it has
 * to be drawn again. One part of a drawing calls this for each element.
 */
export const hasChanged = <E extends SVGElement>(
  drawn: Drawn<E, null>,
  inputs: readonly unknown[],
): boolean => {
  const node: Remembering | null = drawn.node()
  const last = node?.[inputsKept]
  if (last?.length === inputs.length && last.every((input, n) => input === inputs[n])) return false
  if (node) node[inputsKept] = inputs
  return true
}
