import { allColumns } from '../../mechanism/indices.ts'
import { type Card, columnBit, hasHole } from '../../mechanism/card.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { required } from '../../browser/dom.ts'
import {
  drawHead,
  type GridRow,
  type HolePosition,
  idOf,
  labelCell,
  makeRow,
  patternRow,
} from './grid-rows.ts'

const { columns } = dimensions

/** The card as a grid of 24 columns, row 1 at the bottom as in the fabric. */
export interface CardGrid {
  readonly element: HTMLElement
  /** Shows a card and which of its rows is being read. Only what differs from what is shown is touched. */
  readonly show: (card: Card, read: number | null) => void
  readonly place: () => HolePosition
  /** Moves the keyboard's place; beyond the card it stays at the edge. */
  readonly choose: (place: HolePosition) => void
  /** Brings the place into view. */
  readonly reveal: () => void
  /** The same without moving the page, the place in the middle of the grid's window. */
  readonly center: () => void
  readonly placeOf: (target: EventTarget | null) => HolePosition | null
  /** The place under a point of the window, or the nearest one that can be seen. */
  readonly placeAt: (x: number, y: number) => HolePosition
}

/** Builds the grid in its empty place of the page. */
export const createGrid = (host: HTMLElement): CardGrid => {
  const scroll = required(host, '.own-scroll', HTMLElement)
  const grid = required(host, '.own-grid', HTMLElement)
  const body = required(host, '.own-rows', HTMLElement)
  const head = required(host, '.own-head', HTMLElement)
  drawHead(head)
  const model = patternRow()
  const rows: GridRow[] = []
  let shown: Card = []
  let read: number | null = null
  let place: HolePosition = { row: 1, column: 1 }

  const cellAt = ({ row, column }: HolePosition): HTMLElement | undefined => rows[row - 1]?.cells[column - 1]
  const mark = (isOn: boolean): void => {
    cellAt(place)?.toggleAttribute('data-place', isOn)
    rows[place.row - 1]?.element.toggleAttribute('data-chosen', isOn)
    if (isOn) grid.setAttribute('aria-activedescendant', idOf(place))
  }
  const within = (value: number, most: number): number => Math.min(most, Math.max(1, value))
  const choose = ({ row, column }: HolePosition): void => {
    mark(false)
    place = { row: within(row, rows.length), column: within(column, columns) }
    mark(true)
  }
  const fitRows = (count: number): void => {
    for (const { element: gone } of rows.splice(count)) gone.remove()
    const more = Array.from({ length: count - rows.length }, (_, n) => makeRow(model, rows.length + n + 1))
    rows.push(...more)
    body.prepend(...more.map((row) => row.element).reverse())
    shown = rows.map((_, n) => shown[n] ?? 0)
  }
  const showRow = (row: number, before: number, now: number): void => {
    const differs = before ^ now
    for (const column of allColumns) {
      const cell = (differs & columnBit(column)) !== 0 ? cellAt({ row, column }) : undefined
      if (cell) labelCell(cell, { row, column }, hasHole(now, column))
    }
  }
  const markRead = (row: number | null, isRead: boolean): void => {
    const found = row === null ? undefined : rows[row - 1]
    if (!found) return
    found.element.toggleAttribute('data-read', isRead)
    if (isRead) found.head.setAttribute('aria-label', `Row ${row}, being read`)
    else found.head.removeAttribute('aria-label')
  }
  return {
    element: grid,
    show: (card, nowRead) => {
      if (card.length !== rows.length) {
        mark(false)
        fitRows(card.length)
        choose(place)
      }
      if (card !== shown) card.forEach((now, n) => showRow(n + 1, shown[n] ?? 0, now))
      shown = card
      if (read !== nowRead) markRead(read, false)
      read = nowRead
      markRead(read, true)
    },
    place: () => place,
    choose,
    reveal: () => cellAt(place)?.scrollIntoView({ block: 'nearest' }),
    center: () => {
      const row = rows[place.row - 1]?.element
      if (row) scroll.scrollTop = row.offsetTop - (scroll.clientHeight - row.offsetHeight) / 2
    },
    placeOf: (target) => {
      const cell = target instanceof Element ? target.closest<HTMLElement>('.own-cell') : null
      const row = cell?.closest<HTMLElement>('.own-row')
      return cell && row ? { row: Number(row.dataset.row), column: Number(cell.dataset.column) } : null
    },
    placeAt: (x, y) => {
      const box = body.getBoundingClientRect()
      const window = scroll.getBoundingClientRect()
      const first = cellAt({ row: 1, column: 1 })?.getBoundingClientRect().left ?? box.left
      const top = Math.max(window.top + head.offsetHeight + 1, box.top)
      const bottom = Math.min(window.bottom - 1, box.bottom)
      const up = (box.bottom - Math.min(bottom, Math.max(top, y))) / box.height
      return {
        row: within(Math.floor(up * rows.length) + 1, rows.length),
        column: within(Math.floor(((x - first) / (box.right - first)) * columns) + 1, columns),
      }
    },
  }
}
