import { required, element, setText } from '../../browser/dom.ts'
import { readNeedle } from '../../link/needle-list.ts'
import { type CardPlace, canonicalPlace, needleName } from '../../mechanism/bed.ts'
import { isBedLength } from '../../mechanism/own.ts'
import { bedLengths } from '../../mechanism/indices.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { catchRows } from './catch-rows.ts'
import { needleTable } from './needle-table.ts'

/** The event of the document that says that the address names another needle of column 1. */
export const placeChanged = 'placechanged'

const cells = (texts: readonly string[]): HTMLElement[] => texts.map((text) => element('td', {}, [text]))

/** The sheets that name needles by their strips: where each has its lines, and these for a place of the card on a bed. */
const sheets: readonly (readonly [lines: string, (place: CardPlace, needles: number) => HTMLElement[]])[] = [
  [
    '.needle-table tbody',
    (place, needles) =>
      needleTable(place, needles).map(({ column, strip, left, right }) =>
        element('tr', { 'data-strip': String(strip) }, [
          element('th', { scope: 'row' }, [String(column)]),
          ...cells([String(strip), left.join(' '), right.join(' ')]),
        ]),
      ),
  ],
  [
    '.catch-sheet tbody',
    (place, needles) =>
      catchRows(place, needles).map((names) =>
        element(
          'tr',
          {},
          names.map((name) =>
            element('td', {}, name === null ? [] : [element('span', { class: 'tick-box' }), ` ${name}`]),
          ),
        ),
      ),
  ],
]

/** How many needles somebody says that the bed has; or why it can't have so many. */
const readBedLength = (text: string): number | string => {
  const needles = Number(text.trim())
  if (isBedLength(needles)) return needles
  return `A bed has an even number of needles, ${bedLengths.least} to ${bedLengths.most}: half on each side of the middle.`
}

/** The part of an address that names the place of the card and the length of the bed. */
const hashOf = (place: CardPlace, needles: number): string => {
  const first = `first=${needleName(canonicalPlace(place).columnOne)}`
  return needles === dimensions.needles ? first : `${first}&own=1_bed-${needles}`
}

/** Writes the page's sheet again for the needle of column 1 and the bed that are in its fields or in the address. */
export const startFirstNeedle = (): void => {
  const field = required(document, '.first-needle', HTMLElement)
  const input = required(field, '.column-one', HTMLInputElement)
  // A page without a sheet of all needles has no field for the length of the bed.
  const length = field.querySelector<HTMLInputElement>('.bed-needles')
  const said = required(field, '[role="status"]', HTMLElement)
  const bench = required(field, '.first-bench', HTMLAnchorElement)
  const write = (): void => {
    const needles = length ? readBedLength(length.value) : dimensions.needles
    const needle = typeof needles === 'string' ? needles : readNeedle(input.value, needles)
    setText(said, typeof needle === 'string' ? needle : '')
    if (typeof needle === 'string' || typeof needles === 'string') return
    const place = { columnOne: needle }
    for (const name of document.querySelectorAll('.sheet-first')) setText(name, needleName(needle))
    for (const [lines, rows] of sheets)
      document.querySelector(lines)?.replaceChildren(...rows(place, needles))
    bench.hash = hashOf(place, needles)
  }
  for (const each of field.querySelectorAll('input'))
    each.addEventListener('change', () => {
      write()
      history.replaceState(history.state, '', bench.hash)
      document.dispatchEvent(new Event(placeChanged))
    })
  const given = new URLSearchParams(location.hash.slice(1))
  const first = given.get('first')
  const bed = /(?:^|_)bed-(\d+)(?:_|$)/.exec(given.get('own') ?? '')?.[1]
  if (first === null && bed === undefined) return
  if (first !== null) input.value = first
  if (bed !== undefined && length) length.value = bed
  write()
}
