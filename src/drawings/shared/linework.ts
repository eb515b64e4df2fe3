import { hatch } from './definitions.ts'
import { drawGroup, drawList, type Group } from './svg.ts'

/** One line or outline of a detail, as data: pure functions list them, and one function draws the list. */
export interface Line {
  /** Its classes: what it is and how it is marked. */
  readonly look: string
  /** Its path in the picture's pixels. */
  readonly d: string
  /** The hatching that fills it, where it is cut or broken. */
  readonly hatch?: 'cut' | 'broken'
  /** Id of the part it shows, such as `strip.3`. */
  readonly part?: string
}

/** Draws these lines, in order, into the group of this name. */
export const drawLinework = (
  parent: Group,
  name: string,
  prefix: string,
  lines: readonly Line[],
  attributes = {},
): void => {
  drawList(drawGroup(parent, name, attributes), 'path', lines, (line) => ({
    class: line.look,
    d: line.d,
    fill: line.hatch ? hatch(prefix, line.hatch) : '',
    'data-part': line.part ?? '',
  }))
}
