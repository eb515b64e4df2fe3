import { required, element, tell } from '../../browser/dom.ts'
import { readNeedle } from '../../link/needle-list.ts'
import { needleName } from '../../mechanism/bed.ts'
import { needleTable } from './needle-table.ts'

/** Rewrites the table for the needle that somebody names as one of column 1. */
export const startFirstNeedle = (): void => {
  const field = required(document, '.first-needle', HTMLElement)
  const input = required(field, 'input', HTMLInputElement)
  const said = required(field, '[role="status"]', HTMLElement)
  const body = required(document, '.needle-table tbody', HTMLElement)
  input.addEventListener('change', () => {
    const needle = readNeedle(input.value)
    tell(said, typeof needle === 'string' ? needle : '')
    if (typeof needle === 'string') return
    tell(required(document, '.table-first', HTMLElement), needleName(needle))
    body.replaceChildren(
      ...needleTable(needle).map(({ column, strip, left, right }) =>
        element('tr', { 'data-strip': String(strip) }, [
          element('th', { scope: 'row' }, [String(column)]),
          element('td', {}, [String(strip)]),
          element('td', {}, [left.join(' ')]),
          element('td', {}, [right.join(' ')]),
        ]),
      ),
    )
  })
}
