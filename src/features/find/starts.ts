import { speeds } from '../../find/battery.ts'
import { dimensionsAt, type MachinePlace } from '../../find/view.ts'
import { firstPass, type SeenPass } from '../../link/session.ts'
import { readSession } from '../../link/session-link.ts'
import { type CardLibrary, rowsOf } from '../../link/state.ts'
import { canonicalPlace, usualPlace, type Way } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Outcome } from '../../mechanism/gate.ts'
import { readNeedle } from '../../link/needle-list.ts'
import { required } from '../../browser/dom.ts'
import { expectedIn } from './marks.ts'
import { type BedMarks, markAs } from '../../link/bed-marks.ts'
import { needlesAt } from '../../find/bed-needles.ts'
import { slotOf } from '../../mechanism/indices.ts'
import { at } from '../../mechanism/lookup.ts'
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
export const plainPasses = (
  plain: Plain,
  home: SeenPass,
  library: CardLibrary,
  place: MachinePlace,
): SeenPass[] => {
  const rows = rowsOf(home.card, library) ?? []
  const slot = slotOf(plain.needle, dimensionsAt(place).needles)
  const isUnasked = plain.which === 'everything' || (plain.when === 'fast' && plain.which !== 'nothing')
  const actual: Outcome = isUnasked ? 'selected' : 'plain'
  const expected = (row: number): Outcome | undefined =>
    expectedIn({ ...home, row, way: 1 }, library, place)[slot]
  // Rows of odd numbers are read to the right. Best is one after which the next row shows the needle wrong, too.
  const shows = (number: number): boolean => expected(((number - 1) % rows.length) + 1) !== actual
  const toRight = rows.flatMap((_, n) => (n % 2 === 0 && shows(n + 1) ? [n + 1] : []))
  const row = toRight.find((number) => shows(number + 1)) ?? toRight[0] ?? 1
  const pass = (by: number, way: Way, speed: number, isWrong: boolean): SeenPass => {
    const made: SeenPass = { ...home, row: ((row - 1 + by) % Math.max(1, rows.length)) + 1, way, speed }
    const marks = expectedIn(made, library, place).map((should, index) =>
      isWrong && isAmong(plain.which, index, slot) ? markAs(actual, should) : 'r',
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

/**
 * An example's marks, which are those of the training machine's bed with column 1 at its usual needle, on a bed with it
 * elsewhere or of another length: those of needles so far away are as those one card's repeat nearer.
 */
export const movedTo = (place: MachinePlace, marks: BedMarks): BedMarks => {
  const by = canonicalPlace(place).columnOne - usualPlace.columnOne
  const { columns } = dimensions
  const onExample = (needle: number): number => {
    const there = needle - by
    if (there < 0) return there + columns * Math.ceil(-there / columns)
    return there - columns * Math.max(0, Math.ceil((there + 1 - marks.length) / columns))
  }
  return needlesAt(place).map((needle) => at(marks, onExample(needle)))
}

const begin = (root: HTMLElement, store: FindStore, passes: readonly SeenPass[]): void => {
  store.set({ passes, checked: [], finding: null }, passes.length - 1)
  required(root, '.starts', HTMLDetailsElement).open = false
  required(root, '.starts-said', HTMLElement).textContent =
    'Filled in as an example. Now make it like your own bed; Undo brings back what was there.'
  root.querySelector<HTMLElement>('.needle[tabindex="0"]')?.focus()
}

/** Fills in the passes of a picture, by its session's link. */
export const startFromPicture = (root: HTMLElement, store: FindStore, link: string): void => {
  const place = store.now().session
  const { passes } = readSession(link, store.library).session
  begin(
    root,
    store,
    passes.map((pass) => ({ ...pass, marks: movedTo(place, pass.marks) })),
  )
}

/** Fills in the passes that the answers to the three questions describe. */
export const startFromQuestions = (root: HTMLElement, store: FindStore, form: HTMLFormElement): void => {
  const data = new FormData(form)
  const { session } = store.now()
  const typed = required(form, 'input[name="needle"]', HTMLInputElement).value
  const needle = readNeedle(typed, dimensionsAt(session).needles)
  const trouble = required(form, '.questions-said', HTMLElement)
  trouble.textContent = typeof needle === 'string' ? needle : ''
  if (typeof needle === 'string') return
  const plain: Plain = {
    which: data.get('which') as Plain['which'],
    ways: data.get('ways') as Plain['ways'],
    when: data.get('when') as Plain['when'],
    needle,
  }
  begin(root, store, plainPasses(plain, firstPass(store.library, session.own), store.library, session))
}
