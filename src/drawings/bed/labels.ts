import { modulo, needleName } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShapes, type Group } from '../shared/svg.ts'
import { type BedLayout, halfway, lineOf, needlePosition } from './layout.ts'
import { type BedSeen, isWrong, markOf } from './marks.ts'

/** A needle's name under its line. */
interface Name {
  readonly index: number
  readonly look: 'wrong' | 'end' | 'middle' | ''
  /** Which end of it is at `x`; its middle where that is not said. */
  readonly anchor: 'start' | '' | 'end'
  readonly x: number
}

const right = dimensions.needles / 2
const gap = 5

const nameAt = (layout: BedLayout, index: number, look: Name['look']): Name => {
  const { x } = needlePosition(layout, index)
  if (look !== 'middle') return { index, look, anchor: '', x }
  // The names of the middle are on either side of its line.
  return index < right
    ? { index, look, anchor: 'end', x: x + halfway(layout) - 4 }
    : { index, look, anchor: 'start', x: x + halfway(layout) - layout.pitch + 4 }
}

/** From where to where a name reaches, in pixels. */
const reachOf = (layout: BedLayout, { index, anchor, x }: Name): readonly [number, number] => {
  const width = needleName(toNeedle(index)).length * layout.letter
  const from = anchor === '' ? x - width / 2 : anchor === 'end' ? x - width : x
  return [from, from + width]
}

const isClear = (layout: BedLayout, one: Name, others: readonly Name[]): boolean => {
  const [from, to] = reachOf(layout, one)
  return others.every((other) => {
    const [start, end] = reachOf(layout, other)
    const isApart = to + gap <= start || end + gap <= from
    return isApart || lineOf(layout, other.index) !== lineOf(layout, one.index)
  })
}

/** The names of the needles that are not as asked, where there is room for all of them; else of none. */
const wrongNames = (layout: BedLayout, bed: BedSeen): Name[] => {
  const names: Name[] = []
  for (let index = bed.first; index <= bed.last; index++) {
    if (!isWrong(markOf(bed, index))) continue
    const name = nameAt(layout, index, 'wrong')
    if (!isClear(layout, name, names.slice(-1))) return []
    names.push(name)
  }
  return names
}

/** The names that are shown, those that matter most first: the wrong needles, the middle, the ends, every eighth. */
const namesOf = (layout: BedLayout, bed: BedSeen): Name[] => {
  const shown = wrongNames(layout, bed)
  const add = (index: number, look: Name['look']): void => {
    const name = nameAt(layout, index, look)
    if (index >= bed.first && index <= bed.last && isClear(layout, name, shown)) shown.push(name)
  }
  add(right - 1, 'middle')
  add(right, 'middle')
  add(bed.first, 'end')
  add(bed.last, 'end')
  for (let index = bed.first; index <= bed.last; index++)
    if (modulo(index - right, dimensions.strips) === 0) add(index, '')
  return shown.sort((one, other) => one.index - other.index)
}

/** Writes the needles' names under their lines. */
export const drawNames = (root: Group, layout: BedLayout, bed: BedSeen): void => {
  const group = drawGroup(root, 'seen-names', { 'text-anchor': 'middle' })
  drawShapes(group, 'text', 'seen-name', namesOf(layout, bed), ({ look, anchor, x, index }) => ({
    'data-look': look,
    'text-anchor': anchor,
    x: px(x),
    y: px(needlePosition(layout, index).y + layout.names),
    text: needleName(toNeedle(index)),
  }))
}
