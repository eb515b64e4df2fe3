import { allColumns } from '../../mechanism/indices.ts'
import { element } from '../../browser/dom.ts'

/** A position of a hole on the card: row and column from 1. */
export interface HolePosition {
  readonly row: number
  readonly column: number
}

/** What a position is called. */
export const holeWords = ({ row, column }: HolePosition, isHole: boolean): string =>
  `Row ${row}, column ${column}, ${isHole ? 'hole' : 'no hole'}`

/** A row of the grid: its number, and its cells from column 1. */
export interface GridRow {
  readonly element: HTMLElement
  readonly head: HTMLElement
  readonly cells: readonly HTMLElement[]
}

export const idOf = ({ row, column }: HolePosition): string => `own-card-${row}-${column}`

/** A row as the grid has many: cloning is several times quicker than making. */
export const patternRow = (): HTMLElement =>
  element('div', { class: 'own-row', role: 'row' }, [
    element('span', { class: 'own-row-number', role: 'rowheader' }),
    ...allColumns.map((column) =>
      element('span', { class: 'own-cell', role: 'gridcell', 'data-column': String(column) }),
    ),
  ])

export const labelCell = (cell: HTMLElement, place: HolePosition, isHole: boolean): void => {
  cell.toggleAttribute('data-hole', isHole)
  cell.setAttribute('aria-label', holeWords(place, isHole))
}

/** A row of the grid, without holes, as a clone of the pattern. */
export const makeRow = (model: HTMLElement, row: number): GridRow => {
  const made = model.cloneNode(true) as HTMLElement
  const [head, ...cells] = [...made.children] as HTMLElement[]
  if (!head) throw new Error('a row lacks its head')
  made.dataset.row = String(row)
  head.textContent = String(row)
  cells.forEach((cell, n) => {
    cell.id = idOf({ row, column: n + 1 })
    labelCell(cell, { row, column: n + 1 }, false)
  })
  return { element: made, head, cells }
}

/** Writes the columns' numbers above the grid. */
export const drawHead = (host: HTMLElement): void => {
  host.append(
    element('span', { class: 'own-row-number', role: 'columnheader' }, [
      element('span', { class: 'unseen' }, ['Row']),
    ]),
    ...allColumns.map((column) =>
      element('span', { class: 'own-column-number', role: 'columnheader' }, [String(column)]),
    ),
  )
}
