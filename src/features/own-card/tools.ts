import {
  addRow,
  emptyCard,
  mirrorCard,
  removeRows,
  repeatRows,
  shiftColumns,
  shiftRows,
  turnCard,
} from '../../link/card-edit.ts'
import type { Card } from '../../mechanism/card.ts'
import { required, dataOf } from '../../browser/dom.ts'
import type { Bench } from './card-bench.ts'

/** Changes of the whole card, by the button that makes them, and what is said then. */
const wholeChanges: Readonly<Record<string, { change: (card: Card) => Card; said: string }>> = {
  mirror: { change: mirrorCard, said: 'Mirrored: column 1 is the last now.' },
  turn: { change: turnCard, said: 'Upside down: the last row is row 1 now.' },
  left: {
    change: (card) => shiftColumns(card, -1),
    said: 'One column to the left; column 1 came in at the right.',
  },
  right: {
    change: (card) => shiftColumns(card, 1),
    said: 'One column to the right; the last came in at the left.',
  },
  up: { change: (card) => shiftRows(card, 1), said: 'One row up; the last row came in as row 1.' },
  down: { change: (card) => shiftRows(card, -1), said: 'One row down; row 1 came in as the last.' },
}

const bindWhole = (editor: HTMLElement, bench: Bench): void => {
  for (const button of editor.querySelectorAll<HTMLButtonElement>('[data-change]'))
    button.addEventListener('click', () => {
      const found = wholeChanges[dataOf(button, 'change')]
      const card = bench.card()
      if (found && card) bench.use(found.change(card), found.said)
    })
}

const bindRow = (editor: HTMLElement, bench: Bench): void => {
  required(editor, '.own-add', HTMLButtonElement).addEventListener('click', () => {
    const row = bench.row()
    if (bench.edit(addRow(bench.card() ?? [], row), `Row ${row + 1} is new and empty.`)) bench.choose(row + 1)
  })
  required(editor, '.own-remove', HTMLButtonElement).addEventListener('click', () => {
    const row = bench.row()
    if (bench.edit(removeRows(bench.card() ?? [], row, row), `Row ${row} is removed.`)) bench.choose(row)
  })
}

/** A whole number from a field; NaN where it holds none. */
const numberIn = (input: HTMLInputElement): number => (input.value.trim() === '' ? NaN : Number(input.value))

/** Whether a field holds a whole number; says so where not. */
const isWhole = (input: HTMLInputElement, name: string, bench: Bench): boolean => {
  if (Number.isInteger(numberIn(input))) return true
  bench.tell(`Write a whole number into “${name}”.`)
  input.focus()
  return false
}

const bindRange = (editor: HTMLElement, bench: Bench): void => {
  const from = required(editor, '.own-from', HTMLInputElement)
  const to = required(editor, '.own-to', HTMLInputElement)
  const times = required(editor, '.own-times', HTMLInputElement)
  const areRows = (): boolean => isWhole(from, 'from row', bench) && isWhole(to, 'to row', bench)
  const names = (): string =>
    from.value === to.value
      ? `Row ${Number(from.value)}`
      : `Rows ${Number(from.value)} to ${Number(to.value)}`
  const are = (): string => (from.value === to.value ? 'is' : 'are')
  required(editor, '.own-repeat', HTMLButtonElement).addEventListener('click', () => {
    if (!areRows() || !isWhole(times, 'times in all', bench)) return
    const edit = repeatRows(bench.card() ?? [], numberIn(from), numberIn(to), numberIn(times))
    bench.edit(edit, `${names()} ${are()} there ${numberIn(times)} times now.`)
  })
  required(editor, '.own-remove-range', HTMLButtonElement).addEventListener('click', () => {
    if (!areRows()) return
    const edit = removeRows(bench.card() ?? [], numberIn(from), numberIn(to))
    bench.edit(edit, `${names()} ${are()} removed.`)
  })
}

const bindNew = (editor: HTMLElement, bench: Bench): void => {
  const rows = required(editor, '.own-new-rows', HTMLInputElement)
  required(editor, '.own-new', HTMLButtonElement).addEventListener('click', () => {
    if (!isWhole(rows, 'rows', bench)) return
    const count = numberIn(rows)
    bench.edit(emptyCard(count), `An empty card of ${count === 1 ? '1 row' : `${count} rows`}.`)
  })
}

/** Binds the tools that change rows and the whole card. */
export const bindTools = (editor: HTMLElement, bench: Bench): void => {
  bindRow(editor, bench)
  bindRange(editor, bench)
  bindWhole(editor, bench)
  bindNew(editor, bench)
}
