import { type NeedleMark, notedAs } from '../../link/bed-marks.ts'
import { columnOfNeedle, needleName, stripOfColumn } from '../../mechanism/bed.ts'
import { needlesAt } from '../../find/bed-needles.ts'
import type { MachinePlace } from '../../find/view.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Outcome } from '../../mechanism/gate.ts'
import { at } from '../../mechanism/lookup.ts'
import type { Needle } from '../../mechanism/indices.ts'
import { element } from '../../browser/dom.ts'

/** The bed in lines of one card repeat each, so that a column's and a strip's needles stand below one another. */
export interface BedGrid {
  readonly root: HTMLElement
  /** How many needles the bed has. */
  readonly count: () => number
  /** The needles of each line, by index from the left. */
  readonly lines: () => readonly (readonly number[])[]
  /** Cuts the bed into lines again, for the card at another place along it, or for another bed. */
  readonly arrange: (machine: MachinePlace) => void
  readonly cell: (index: number) => HTMLElement
  readonly nameOf: (index: number) => string
  /** The needle that a cell of the page shows; null for anything else. */
  readonly needleAt: (target: EventTarget | null) => number | null
  readonly show: (marks: readonly NeedleMark[], expected: readonly Outcome[]) => void
}

/** The whole bed cut at the card's repeats. */
const linesOfBed = (machine: MachinePlace): number[][] => {
  const lines: number[][] = []
  for (const [index, needle] of needlesAt(machine).entries()) {
    if (index === 0 || columnOfNeedle(needle, machine) === 1) lines.push([])
    lines.at(-1)?.push(index)
  }
  return lines
}

const wordsOf = (mark: NeedleMark, expected: Outcome): string => {
  if (mark === 'r') return `${expected === 'selected' ? '' : 'not '}selected, as the card asks`
  if (mark === 'u') return 'did not move'
  if (mark === 'n') return 'not looked at'
  return expected === 'selected' ? 'wrong: missed' : 'wrong: selected without being asked'
}

const cellOf = (needle: Needle, index: number): HTMLElement =>
  element('div', { role: 'gridcell', class: 'needle', tabindex: '-1', 'data-needle': String(index) }, [
    element('span', { class: 'needle-name' }, [needleName(needle)]),
  ])

/** Builds the cells of a machine's bed into an empty grid, with the card at its place along the bed. */
export const createBedGrid = (root: HTMLElement, first: MachinePlace): BedGrid => {
  let needles: readonly Needle[] = []
  let cells: HTMLElement[] = []
  let lines: number[][] = []
  const cell = (index: number): HTMLElement => at(cells, index)
  const nameOf = (index: number): string => needleName(at(needles, index))
  const arrange = (machine: MachinePlace): void => {
    if (needlesAt(machine).length !== needles.length) {
      needles = needlesAt(machine)
      cells = needles.map(cellOf)
    }
    lines = linesOfBed(machine)
    for (const [index, one] of cells.entries()) {
      const column = columnOfNeedle(at(needles, index), machine)
      one.style.setProperty('--column', String(column + Math.floor((column - 1) / dimensions.strips)))
      one.style.setProperty('--strip', String(stripOfColumn(column)))
    }
    root.replaceChildren(
      ...lines.map((line) => element('div', { class: 'bed-line', role: 'row' }, line.map(cell))),
    )
  }
  arrange(first)
  return {
    root,
    count: () => needles.length,
    lines: () => lines,
    arrange,
    cell,
    nameOf,
    needleAt: (target) => {
      const found = target instanceof Element ? target.closest<HTMLElement>('[data-needle]') : null
      return found && root.contains(found) ? Number(found.dataset['needle']) : null
    },
    show: (marks, expected) => {
      for (const [index, mark] of marks.entries()) {
        const should = at(expected, index)
        const look = `${mark} ${notedAs(mark, should)}`
        const one = cell(index)
        if (one.dataset['look'] === look) continue
        one.dataset['look'] = look
        one.setAttribute('aria-label', `${nameOf(index)}, ${wordsOf(mark, should)}`)
      }
    },
  }
}
