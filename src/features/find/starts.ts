import { speeds } from '../../find/battery.ts'
import { firstPass, type SeenPass } from '../../link/session.ts'
import { readSession } from '../../link/session-link.ts'
import { rowsOf } from '../../link/state.ts'
import type { Way } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Outcome } from '../../mechanism/gate.ts'
import { readNeedle } from '../../link/needle-list.ts'
import { required } from '../../browser/dom.ts'
import { expectedIn } from './marks.ts'
import { markAs } from '../../link/bed-marks.ts'
import type { FindStore } from './store.ts'

/** The answers to the three questions, and one of the needles that they are about. */
export interface Plain {
  readonly which: 'nothing' | 'everything' | 'eighth' | 'column' | 'one'
  readonly ways: 'both' | 'one'
  readonly when: 'any' | 'fast'
  readonly needle: number
}

const isAmong = (which: Plain['which'], index: number, needle: number): boolean => {
  if (which === 'everything' || which === 'nothing') return true
  if (which === 'one') return index === needle
  return (index - needle) % (which === 'eighth' ? dimensions.strips : dimensions.columns) === 0
}

/**
 * Passes that look as the answers say: the needle was missed in a row that asks for it; or, where everything is selected or
 * it happens only when fast, selected in a row that does not.
 */
export const plainPasses = (plain: Plain, home: SeenPass, store: Pick<FindStore, 'library'>): SeenPass[] => {
  const rows = rowsOf(home.card, store.library) ?? []
  const isUnasked = plain.which === 'everything' || (plain.when === 'fast' && plain.which !== 'nothing')
  const actual: Outcome = isUnasked ? 'selected' : 'plain'
  const expected = (row: number): Outcome | undefined =>
    expectedIn({ ...home, row, way: 1 }, store.library)[plain.needle]
  // Rows of odd numbers are read to the right. Best is one after which the next row shows the needle wrong, too.
  const shows = (number: number): boolean => expected(((number - 1) % rows.length) + 1) !== actual
  const toRight = rows.flatMap((_, n) => (n % 2 === 0 && shows(n + 1) ? [n + 1] : []))
  const row = toRight.find((number) => shows(number + 1)) ?? toRight[0] ?? 1
  const pass = (by: number, way: Way, speed: number, isWrong: boolean): SeenPass => {
    const made: SeenPass = { ...home, row: ((row - 1 + by) % Math.max(1, rows.length)) + 1, way, speed }
    const marks = expectedIn(made, store.library).map((should, index) =>
      isWrong && isAmong(plain.which, index, plain.needle) ? markAs(actual, should) : 'r',
    )
    return { ...made, marks }
  }
  if (plain.when === 'fast')
    return [
      pass(0, 1, speeds.ordinary, false),
      pass(0, 1, speeds.fast, true),
      pass(1, -1, speeds.fast, plain.ways === 'both'),
    ]
  return [pass(0, 1, speeds.ordinary, true), pass(1, -1, speeds.ordinary, plain.ways === 'both')]
}

/** The pictures and the questions that one can start from. */
export const bindStarts = (root: HTMLElement, store: FindStore): void => {
  const starts = required(root, '.starts', HTMLDetailsElement)
  const said = required(root, '.starts-said', HTMLElement)
  const begin = (passes: readonly SeenPass[]): void => {
    store.set({ passes, checked: [], finding: null }, passes.length - 1)
    starts.open = false
    said.textContent =
      'Filled in as an example. Now make it like your own bed; Undo brings back what was there.'
    root.querySelector<HTMLElement>('.needle[tabindex="0"]')?.focus()
  }
  for (const button of starts.querySelectorAll<HTMLButtonElement>('button[data-session]'))
    button.addEventListener('click', () => {
      begin(readSession(button.dataset.session ?? '', store.library).session.passes)
    })
  const form = required(starts, 'form', HTMLFormElement)
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    const data = new FormData(form)
    const needle = readNeedle(required(form, 'input[name="needle"]', HTMLInputElement).value)
    const trouble = required(form, '.questions-said', HTMLElement)
    trouble.textContent = typeof needle === 'string' ? needle : ''
    if (typeof needle === 'string') return
    begin(
      plainPasses(
        {
          which: data.get('which') as Plain['which'],
          ways: data.get('ways') as Plain['ways'],
          when: data.get('when') as Plain['when'],
          needle,
        },
        firstPass(store.library),
        store,
      ),
    )
  })
}
