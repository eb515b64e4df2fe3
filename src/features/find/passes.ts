import { speeds } from '../../find/battery.ts'
import { allRightOf } from '../../link/bed-marks.ts'
import { quote } from '../../link/troubles.ts'
import type { SeenPass, Session } from '../../link/session.ts'
import { type CardChoice, rowsOf } from '../../link/state.ts'
import { needleName } from '../../mechanism/bed.ts'
import { readNumber } from '../../mechanism/number.ts'
import { withUnit } from '../../words/lists.ts'
import { passPhrase } from '../../words/finding.ts'
import { element, required, setText } from '../../browser/dom.ts'
import type { FindStore } from './store.ts'
import { ownDimensionsWords } from '../../words/own-dimensions.ts'

/** A card's row from what somebody wrote; or a sentence that says why it is none. A number field gives letters as ''. */
export const readRowField = (text: string, rows: number): number | string => {
  const value = readNumber(text.trim())
  if (value !== null && Number.isInteger(value) && value >= 1 && value <= rows) return value
  return text.trim() === ''
    ? `Write the number of a row: this card’s are 1 to ${rows}.`
    : `This card has no row ${quote(text.trim())}: its rows are 1 to ${rows}.`
}

/** The pass after another: the next row, the other way. */
const passAfter = (pass: SeenPass, rows: number | null): SeenPass => ({
  ...pass,
  row: pass.row === null || rows === null ? null : (pass.row % rows) + 1,
  way: pass.way === 1 ? -1 : 1,
  pass: null,
  marks: allRightOf(pass.marks.length),
})

/** A pass with another card: its row is kept where that card has it. */
const withCard = (pass: SeenPass, card: CardChoice, rows: number | null): Partial<SeenPass> => ({
  card,
  row: rows === null ? null : Math.min(pass.row ?? 1, rows),
})

const bindTabs = (root: HTMLElement, store: FindStore): void => {
  const list = required(root, '.pass-list', HTMLElement)
  const remove = required(root, '.pass-remove', HTMLButtonElement)
  required(root, '.pass-add', HTMLButtonElement).addEventListener('click', () => {
    const { passes } = store.now().session
    const last = passes.at(-1) ?? store.pass()
    const rows = rowsOf(last.card, store.library)?.length ?? null
    store.set({ passes: [...passes, passAfter(last, rows)] }, passes.length)
  })
  remove.addEventListener('click', () => {
    const { session, at } = store.now()
    store.set({ passes: session.passes.filter((_, n) => n !== at) }, at - 1)
    list.querySelector<HTMLElement>('[aria-pressed="true"]')?.focus()
  })
  store.subscribe(({ session: { passes }, at }) => {
    remove.disabled = passes.length < 2
    while (list.children.length > passes.length) list.lastElementChild?.remove()
    for (const [n, { row, way, speed, marks }] of passes.entries()) {
      let button = list.children[n]
      if (!button) {
        button = element('button', { type: 'button' }, [
          element('span'),
          ' ',
          element('span', { class: 'pass-count' }),
        ])
        button.addEventListener('click', () => {
          store.set({}, n)
        })
        list.append(button)
      }
      const wrong = marks.filter((mark) => mark === 'w' || mark === 'u').length
      setText(required(button, 'span', HTMLElement), `${n + 1}. ${passPhrase(row, way, speed)}:`)
      setText(required(button, '.pass-count', HTMLElement), wrong === 0 ? 'all right' : `${wrong} wrong`)
      button.setAttribute('aria-pressed', String(n === at))
    }
  })
}

const bindForm = (root: HTMLElement, store: FindStore): void => {
  const row = required(root, '.pass-row', HTMLInputElement)
  const rowName = required(root, '.row-field', HTMLElement)
  const of = required(root, '.pass-rows', HTMLElement)
  const said = required(root, '.row-said', HTMLElement)
  const rowsNow = (): number | null => rowsOf(store.pass().card, store.library)?.length ?? null
  row.addEventListener('change', () => {
    const rows = rowsNow()
    if (rows === null) return
    const reading = readRowField(row.value, rows)
    said.textContent = typeof reading === 'string' ? `${reading} Row ${store.pass().row ?? 1} is kept.` : ''
    if (typeof reading === 'number') store.setPass({ row: reading })
  })
  for (const input of root.querySelectorAll<HTMLInputElement>('input[name="way"]'))
    input.addEventListener('change', () => {
      store.setPass({ way: input.value === '1' ? 1 : -1 })
    })
  for (const input of root.querySelectorAll<HTMLInputElement>('input[name="pace"]'))
    input.addEventListener('change', () => {
      store.setPass({ speed: Number(input.value) })
    })
  for (const input of root.querySelectorAll<HTMLInputElement>('input[name="card"]'))
    input.addEventListener('change', () => {
      const card: CardChoice = input.value === 'none' ? { kind: 'none' } : { kind: 'site', id: input.value }
      store.setPass(withCard(store.pass(), card, rowsOf(card, store.library)?.length ?? null))
    })
  const known: readonly number[] = Object.values(speeds)
  const other = required(root, '.pace-other', HTMLElement)
  store.subscribe(() => {
    const { card, row: at, way, speed } = store.pass()
    const rows = rowsNow()
    rowName.hidden = rows === null
    row.max = String(rows ?? 1)
    if (document.activeElement !== row || row.value === '') row.value = String(at ?? 1)
    setText(of, rows === null ? '' : `of ${rows}`)
    const choose = (name: string, value: string): void => {
      for (const input of root.querySelectorAll<HTMLInputElement>(`input[name="${name}"]`))
        input.checked = input.value === value
    }
    const id = card.kind === 'site' ? card.id : card.kind
    choose('way', String(way))
    choose('pace', String(speed))
    choose('card', id)
    other.hidden = known.includes(speed)
    setText(other, withUnit(speed, 'mm/s'))
    const title = root.querySelector<HTMLInputElement>('input[name="card"]:checked')?.dataset.title
    setText(required(root, '.pass-card', HTMLElement), title ?? 'A card of your own')
  })
}

/** On a phone the pass's form is folded to a line; a button opens it. */
const bindFold = (root: HTMLElement, store: FindStore): void => {
  const form = required(root, '.pass-form', HTMLElement)
  const words = required(root, '.pass-short-words', HTMLElement)
  const change = required(root, '.pass-change', HTMLButtonElement)
  change.addEventListener('click', () => {
    const isOpen = form.toggleAttribute('data-open')
    change.setAttribute('aria-expanded', String(isOpen))
    setText(change, isOpen ? 'Done' : 'Change')
  })
  store.subscribe(() => {
    const { row, way, speed } = store.pass()
    const card = required(root, '.pass-card', HTMLElement).textContent
    setText(words, `${row === null ? '' : `${card}. `}${passPhrase(row, way, speed)}`)
  })
}

const fetchTyped = () => import('./typed-needles.ts')

/** The list of wrong needles that one can type, and the needle of column 1. What reads them is fetched when it is first asked for. */
const bindNeedles = (root: HTMLElement, store: FindStore): void => {
  const form = required(root, '.typed', HTMLFormElement)
  const input = required(form, 'input', HTMLInputElement)
  const said = required(form, '.typed-said', HTMLElement)
  // What was said, and typed, is about the session as it was then.
  let saidOf: Session | null = null
  store.subscribe(({ session }) => {
    if (saidOf === null || session === saidOf) return
    saidOf = null
    said.textContent = ''
  })
  required(root, '.find-clear', HTMLButtonElement).addEventListener('click', () => {
    input.value = ''
  })
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    void fetchTyped().then(({ markTyped }) => {
      said.textContent = markTyped(store, input.value)
      saidOf = store.now().session
    })
  })
  const columnOne = required(root, '.find-column-one', HTMLInputElement)
  columnOne.addEventListener('change', () => {
    void fetchTyped().then(({ setColumnOne }) => {
      setText(required(root, '.row-said', HTMLElement), setColumnOne(store, columnOne.value))
    })
  })
  const own = required(root, '.find-own', HTMLElement)
  store.subscribe(({ session }) => {
    columnOne.value = needleName(session.columnOne)
    own.textContent = ownDimensionsWords(session.own)
    own.hidden = own.textContent === ''
  })
}

/** The passes: which there are, what each was, and the typed list of wrong needles. */
export const bindPasses = (root: HTMLElement, store: FindStore): void => {
  bindTabs(root, store)
  bindForm(root, store)
  bindFold(root, store)
  bindNeedles(root, store)
  for (const input of root.querySelectorAll<HTMLInputElement>('input[name="care"]'))
    input.addEventListener('change', () => {
      store.set({ isRough: input.value === 'rough' })
    })
  store.subscribe(({ session: { isRough } }) => {
    for (const input of root.querySelectorAll<HTMLInputElement>('input[name="care"]'))
      input.checked = (input.value === 'rough') === isRough
  })
  const undo = required(root, '.find-undo', HTMLButtonElement)
  undo.addEventListener('click', () => {
    store.undo()
  })
  store.subscribe(() => {
    undo.disabled = !store.canUndo()
  })
}
