import { type NeedleMark, notedAs } from '../../link/bed-marks.ts'
import { type CardPlace, columnOfNeedle, needleName, stripOfColumn } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Outcome } from '../../mechanism/gate.ts'
import { at } from '../../mechanism/lookup.ts'
import { allNeedles, type Needle, toNeedle } from '../../mechanism/indices.ts'
import { element } from '../../browser/dom.ts'

/** The bed in lines of one card repeat each, so that a column's and a strip's needles stand below one another. */
export interface BedGrid {
  readonly root: HTMLElement
  /** The needles of each line, by index from the left. */
  readonly lines: () => readonly (readonly number[])[]
  /** Cuts the bed into lines again, for the card at another place along it. */
  readonly arrange: (place: CardPlace) => void
  readonly cell: (index: number) => HTMLElement
  /** The needle that a cell of the page shows; null for anything else. */
  readonly needleAt: (target: EventTarget | null) => number | null
  readonly show: (marks: readonly NeedleMark[], expected: readonly Outcome[]) => void
}

/** The whole bed cut at the card's repeats. */
const linesOfBed = (place: CardPlace): number[][] => {
  const lines: number[][] = []
  for (let index = 0; index < dimensions.needles; index++) {
    if (index === 0 || columnOfNeedle(toNeedle(index), place) === 1) lines.push([])
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

const cellOf = (needle: Needle): HTMLElement =>
  element('div', { role: 'gridcell', class: 'needle', tabindex: '-1', 'data-needle': String(needle) }, [
    element('span', { class: 'needle-name' }, [needleName(needle)]),
  ])

/** Builds the bed's cells into an empty grid, with the card at a place along the bed. */
export const createBedGrid = (root: HTMLElement, first: CardPlace): BedGrid => {
  const cells = allNeedles.map(cellOf)
  let lines: number[][] = []
  const cell = (index: number): HTMLElement => at(cells, index)
  const arrange = (place: CardPlace): void => {
    lines = linesOfBed(place)
    for (const [index, one] of cells.entries()) {
      const column = columnOfNeedle(toNeedle(index), place)
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
    lines: () => lines,
    arrange,
    cell,
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
        one.setAttribute('aria-label', `${needleName(toNeedle(index))}, ${wordsOf(mark, should)}`)
      }
    },
  }
}
