import { hasHole } from '../../mechanism/card.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { toColumn } from '../../mechanism/indices.ts'
import { element, required } from '../../browser/dom.ts'

/** Large keys for the columns of one row, for fingers. */
export interface Pad {
  readonly show: (row: number, rows: number, holes: number) => void
}

/** Makes the pad's keys. `step` goes some rows up; `press` punches or fills a column. */
export const createPad = (
  host: HTMLElement,
  step: (rows: number) => void,
  press: (column: number) => void,
): Pad => {
  const name = required(host, '.own-pad-row', HTMLElement)
  const below = required(host, '.own-below', HTMLButtonElement)
  const above = required(host, '.own-above', HTMLButtonElement)
  const keys = Array.from({ length: dimensions.columns }, (_, n) => {
    const key = element('button', { type: 'button', class: 'own-key' }, [String(n + 1)])
    key.addEventListener('click', () => {
      press(n + 1)
    })
    return key
  })
  required(host, '.own-keys', HTMLElement).append(...keys)
  below.addEventListener('click', () => {
    step(-1)
  })
  above.addEventListener('click', () => {
    step(1)
  })
  return {
    show: (row, rows, holes) => {
      name.textContent = `Row ${row} of ${rows}`
      below.disabled = row === 1
      above.disabled = row === rows
      keys.forEach((key, n) => {
        key.setAttribute('aria-pressed', String(hasHole(holes, toColumn(n + 1))))
        key.setAttribute('aria-label', `Row ${row}, column ${n + 1}`)
      })
    },
  }
}
