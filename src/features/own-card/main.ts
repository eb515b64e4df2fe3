import { emptyCard, withHole } from '../../link/card-edit.ts'
import { type CardChoice, rowsOf } from '../../link/state.ts'
import { type Card, hasHole } from '../../mechanism/card.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { base } from '../../link/site-path.ts'
import { testCardPasses, testCardSession } from '../../link/test-card-session.ts'
import { type Needle, toColumn } from '../../mechanism/indices.ts'
import { faultsOnCard } from '../machine/index.ts'
import { required } from '../../browser/dom.ts'
import type { Moment, MachineStore } from '../../browser/machine-store.ts'
import type { Bench } from './card-bench.ts'
import { bindFiles } from './files.ts'
import { createGrid } from './grid.ts'
import { type HolePosition, holeWords } from './grid-rows.ts'
import { moveByKeys } from './keys.ts'
import { createPad } from './pad.ts'
import { paintByPointer } from './painting.ts'
import { bindTools } from './tools.ts'

/** Rows of a card that is begun with one press. */
const usualRows = 24

const choiceWords = (card: CardChoice, rows: number): string => {
  const length = rows === 1 ? '1 row' : `${rows} rows`
  if (card.kind === 'none') return 'There is no card in the reader: nothing stops a pin.'
  return card.kind === 'own'
    ? `Your own card, ${length}. The link carries it.`
    : `A card of this site, ${length}. Your first change makes a copy of your own.`
}

/** Brings the editor for one's own card to life. */
export const startCardEditor = (root: HTMLElement, store: MachineStore): void => {
  const editor = required(root, '.card-editor', HTMLElement)
  const which = required(editor, '.own-which', HTMLElement)
  const none = required(editor, '.own-none', HTMLElement)
  const work = required(editor, '.own-work', HTMLElement)
  const said = required(editor, '.own-said', HTMLElement)
  const chosen = required(editor, '.own-chosen', HTMLElement)
  const find = required(editor, '.own-find', HTMLAnchorElement)
  const grid = createGrid(editor)
  let isSeen = false
  let shown: { card: CardChoice; read: number | null; columnOne: Needle } | null = null

  const tell = (words: string): void => {
    said.textContent = words
  }
  const card = (): Card | null => rowsOf(store.now().state.card, store.library)
  const holesAt = (row: number): number => card()?.[row - 1] ?? 0
  const use = (rows: Card, words: string): void => {
    const { faults, said: gone } = faultsOnCard(store.now().state.faults, rows.length)
    store.set({ card: { kind: 'own', rows }, faults })
    tell([words, gone].filter((part) => part !== '').join(' '))
  }
  const showPad = (): void => {
    const { row } = grid.place()
    pad.show(row, card()?.length ?? 1, holesAt(row))
    chosen.textContent = String(row)
  }
  const bench: Bench = {
    card,
    row: () => grid.place().row,
    choose: (row) => {
      grid.choose({ ...grid.place(), row })
      grid.reveal()
      showPad()
    },
    use,
    edit: (edit, words) => {
      if (edit.rows) use(edit.rows, words)
      else tell(edit.reason)
      return edit.rows !== null
    },
    tell,
  }
  const isHole = ({ row, column }: HolePosition): boolean => hasHole(holesAt(row), toColumn(column))
  const paint = (places: readonly HolePosition[], hole: boolean, words = ''): void => {
    const before = card()
    if (!before) return
    const after = places.reduce(
      (rows, { row, column }) => withHole(rows, row, column, hole).rows ?? rows,
      before,
    )
    use(after, words)
    showPad()
  }
  const toggle = (place: HolePosition): void => {
    paint([place], !isHole(place), `${holeWords(place, !isHole(place))}.`)
  }
  const pad = createPad(
    editor,
    (rows) => {
      bench.choose(grid.place().row + rows)
    },
    (column) => {
      toggle({ row: grid.place().row, column })
    },
  )

  const show = ({ state, frame }: Moment): void => {
    const read = frame.pass.row
    const { columnOne } = state
    const isSame = shown?.card === state.card && shown.read === read && shown.columnOne === columnOne
    if (!isSeen || isSame) return
    const rows = card()
    if (shown?.card !== state.card) {
      which.textContent = choiceWords(state.card, rows?.length ?? 0)
      none.hidden = rows !== null
      work.hidden = rows === null
    }
    const isFirst = shown === null
    shown = { card: state.card, read, columnOne }
    if (!rows) return
    find.href = `${base}/find/#${testCardSession(testCardPasses([{ card: rows, pass: 1, speed: dimensions.speed }]), state)}`
    grid.show(rows, read)
    if (isFirst) grid.choose({ row: read ?? 1, column: 1 })
    showPad()
  }
  // The grid is built when the editor is first opened, and rests while it is closed and has no width.
  new ResizeObserver(() => {
    const wasSeen = isSeen
    isSeen = editor.offsetWidth > 0
    if (!isSeen || wasSeen) return
    const isFirst = shown === null
    show(store.now())
    if (isFirst) grid.center()
  }).observe(editor)
  store.subscribe(show)

  moveByKeys(grid, showPad, () => {
    toggle(grid.place())
  })
  paintByPointer(grid, {
    isHole,
    paint,
    touched: () => {
      editor.setAttribute('data-touched', '')
      showPad()
    },
  })
  required(editor, '.own-begin', HTMLButtonElement).addEventListener('click', () => {
    bench.edit(emptyCard(usualRows), `An empty card of ${usualRows} rows.`)
    grid.element.focus()
  })
  bindTools(editor, bench)
  bindFiles(editor, bench)
}
