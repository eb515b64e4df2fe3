import { at, lastOf } from '../../mechanism/lookup.ts'
import { required, setText } from '../../browser/dom.ts'
import type { BedGrid } from './bed-grid.ts'

/** The chosen needle, and the range of needles that ends with it. */
export interface BedCursor {
  /** The chosen needle, by index from the left. */
  readonly needle: () => number
  /** Where the range began: the chosen needle where there is no range. */
  readonly anchor: () => number
  /** The needles of the range, from the left. */
  readonly range: () => number[]
  /** Chooses a needle, the nearest that the bed has; `isRange` keeps where the range began; null moves no focus. */
  readonly goTo: (needle: number, isRange: boolean, focus: FocusOptions | null) => void
  /** Shows the chosen needle, and its line, on a bed that has been cut into other lines. */
  readonly show: () => void
  /** Chooses R1, on a bed of another length. */
  readonly begin: () => void
}

/** The needles from one to another, both included. */
const between = (one: number, other: number): number[] =>
  Array.from({ length: Math.abs(other - one) + 1 }, (_, n) => Math.min(one, other) + n)

/** Keeps the chosen needle, shows it and its line, and pages through the lines. It begins at R1. */
export const createBedCursor = (root: HTMLElement, grid: BedGrid): BedCursor => {
  const here = required(root, '.bed-here', HTMLElement)
  const back = required(root, '.bed-back', HTMLButtonElement)
  const on = required(root, '.bed-on', HTMLButtonElement)
  const page = required(root, '.bed-page', HTMLElement)
  let cursor = grid.count() / 2
  let anchor = cursor

  const range = (): number[] => between(anchor, cursor)
  const lineOf = (needle: number): number => grid.lines().findIndex((line) => line.includes(needle))

  const showCells = (chosen: ReadonlySet<number>): void => {
    for (const needle of grid.lines().flat()) {
      const cell = grid.cell(needle)
      cell.tabIndex = needle === cursor ? 0 : -1
      cell.toggleAttribute('data-chosen', chosen.size > 1 && chosen.has(needle))
      cell.toggleAttribute('data-cursor', needle === cursor)
    }
  }
  const showLine = (): void => {
    const line = lineOf(cursor)
    for (const [n, row] of [...grid.root.children].entries()) row.toggleAttribute('data-shown', n === line)
    const needles = at(grid.lines(), line)
    setText(page, `${grid.nameOf(at(needles, 0))} to ${grid.nameOf(lastOf(needles))}`)
    back.disabled = line === 0
    on.disabled = line === grid.lines().length - 1
  }
  const show = (): void => {
    const chosen = range()
    showCells(new Set(chosen))
    showLine()
    const name = grid.nameOf(at(chosen, 0))
    setText(here, chosen.length > 1 ? `${name} to ${grid.nameOf(lastOf(chosen))}` : name)
  }
  const goTo: BedCursor['goTo'] = (needle, isRange, focus) => {
    cursor = Math.max(0, Math.min(grid.count() - 1, needle))
    if (!isRange) anchor = cursor
    show()
    if (focus) grid.cell(cursor).focus(focus)
  }
  const turnPage = (by: number): void => {
    const first = grid.lines()[lineOf(cursor) + by]?.[0]
    if (first !== undefined) goTo(first, false, null)
  }
  back.addEventListener('click', () => {
    turnPage(-1)
  })
  on.addEventListener('click', () => {
    turnPage(1)
  })
  show()
  const begin = (): void => {
    goTo(grid.count() / 2, false, null)
  }
  return { needle: () => cursor, anchor: () => anchor, range, goTo, show, begin }
}
