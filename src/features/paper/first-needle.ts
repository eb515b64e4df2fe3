import { required, element, tell } from '../../browser/dom.ts'
import { readNeedle } from '../../link/needle-list.ts'
import { type CardPlace, canonicalPlace, needleName } from '../../mechanism/bed.ts'
import { catchRows } from './catch-rows.ts'
import { needleTable } from './needle-table.ts'

/** The event of the document that says that the address names another needle of column 1. */
export const placeChanged = 'placechanged'

const cells = (texts: readonly string[]): HTMLElement[] => texts.map((text) => element('td', {}, [text]))

/** The sheets that name needles by their strips: where each has its lines, and these for a place of the card. */
const sheets: readonly (readonly [lines: string, (place: CardPlace) => HTMLElement[]])[] = [
  [
    '.needle-table tbody',
    (place) =>
      needleTable(place).map(({ column, strip, left, right }) =>
        element('tr', { 'data-strip': String(strip) }, [
          element('th', { scope: 'row' }, [String(column)]),
          ...cells([String(strip), left.join(' '), right.join(' ')]),
        ]),
      ),
  ],
  [
    '.catch-sheet tbody',
    (place) =>
      catchRows(place).map((names) =>
        element(
          'tr',
          {},
          names.map((name) => element('td', {}, [element('span', { class: 'tick-box' }), ` ${name}`])),
        ),
      ),
  ],
]

/** Writes the page's sheet again for the needle of column 1 that is named in its field or in the address. */
export const startFirstNeedle = (): void => {
  const field = required(document, '.first-needle', HTMLElement)
  const input = required(field, 'input', HTMLInputElement)
  const said = required(field, '[role="status"]', HTMLElement)
  const bench = required(field, 'a', HTMLAnchorElement)
  const write = (): void => {
    const needle = readNeedle(input.value)
    tell(said, typeof needle === 'string' ? needle : '')
    if (typeof needle === 'string') return
    const place = { columnOne: needle }
    for (const name of document.querySelectorAll('.sheet-first')) tell(name, needleName(needle))
    for (const [lines, rows] of sheets) document.querySelector(lines)?.replaceChildren(...rows(place))
    bench.hash = `first=${needleName(canonicalPlace(place).columnOne)}`
  }
  input.addEventListener('change', () => {
    write()
    history.replaceState(history.state, '', bench.hash)
    document.dispatchEvent(new Event(placeChanged))
  })
  const given = new URLSearchParams(location.hash.slice(1)).get('first')
  if (given === null) return
  input.value = given
  write()
}
