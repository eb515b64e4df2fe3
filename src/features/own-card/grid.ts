import { type Card, columnBit, hasHole } from '../../mechanism/card.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { element, required } from '../../browser/dom.ts'

/** A place on the card: row and column from 1. */
export interface Place {
  readonly row: number
  readonly column: number
}

/** The card as a grid of 24 columns, row 1 at the bottom as in the fabric. */
export interface CardGrid {
  readonly element: HTMLElement
  /** Shows a card and which of its rows is being read. Only what differs from what is shown is touched. */
  readonly show: (card: Card, read: number | null) => void
  readonly place: () => Place
  /** Moves the keyboard's place; beyond the card it stays at the edge. */
  readonly choose: (place: Place) => void
  /** Brings the place into view. */
  readonly reveal: () => void
  /** The same without moving the page, the place in the middle of the grid's window. */
  readonly center: () => void
  readonly placeOf: (target: EventTarget | null) => Place | null
  /** The place under a point of the window, or the nearest one that can be seen. */
  readonly placeAt: (x: number, y: number) => Place
}

const { columns } = dimensions
const columnNumbers = Array.from({ length: columns }, (_, n) => n + 1)

/** What a place is called. */
export const placeWords = ({ row, column }: Place, isHole: boolean): string =>
  `Row ${row}, column ${column}, ${isHole ? 'hole' : 'no hole'}`

interface GridRow {
  readonly element: HTMLElement
  readonly head: HTMLElement
  readonly cells: readonly HTMLElement[]
}

const idOf = ({ row, column }: Place): string => `own-card-${row}-${column}`

/** A row as the grid has many: cloning is several times quicker than making. */
const pattern = (): HTMLElement =>
  element('div', { class: 'own-row', role: 'row' }, [
    element('span', { class: 'own-row-number', role: 'rowheader' }),
    ...columnNumbers.map((column) =>
      element('span', { class: 'own-cell', role: 'gridcell', 'data-column': String(column) }),
    ),
  ])

const labelCell = (cell: HTMLElement, place: Place, isHole: boolean): void => {
  cell.toggleAttribute('data-hole', isHole)
  cell.setAttribute('aria-label', placeWords(place, isHole))
}

const makeRow = (model: HTMLElement, row: number): GridRow => {
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

const drawHead = (host: HTMLElement): void => {
  host.append(
    element('span', { class: 'own-row-number', role: 'columnheader' }, [
      element('span', { class: 'unseen' }, ['Row']),
    ]),
    ...columnNumbers.map((column) =>
      element('span', { class: 'own-column-number', role: 'columnheader' }, [String(column)]),
    ),
  )
}

/** Builds the grid in its empty place of the page. */
export const createGrid = (host: HTMLElement): CardGrid => {
  const scroll = required(host, '.own-scroll', HTMLElement)
  const grid = required(host, '.own-grid', HTMLElement)
  const body = required(host, '.own-rows', HTMLElement)
  const head = required(host, '.own-head', HTMLElement)
  drawHead(head)
  const model = pattern()
  const rows: GridRow[] = []
  let shown: Card = []
  let read: number | null = null
  let place: Place = { row: 1, column: 1 }

  const cellAt = ({ row, column }: Place): HTMLElement | undefined => rows[row - 1]?.cells[column - 1]
  const mark = (isOn: boolean): void => {
    cellAt(place)?.toggleAttribute('data-place', isOn)
    rows[place.row - 1]?.element.toggleAttribute('data-chosen', isOn)
    if (isOn) grid.setAttribute('aria-activedescendant', idOf(place))
  }
  const within = (value: number, most: number): number => Math.min(most, Math.max(1, value))
  const choose = ({ row, column }: Place): void => {
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
    for (const column of columnNumbers) {
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
