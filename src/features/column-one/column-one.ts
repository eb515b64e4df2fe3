import { element, required, setText } from '../../browser/dom.ts'
import { needleName, placeByHole, usualPlace } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { isColumn, type Needle, needlesBetween, toNeedle } from '../../mechanism/indices.ts'
import { cardPlaceWords } from '../../words/card-place.ts'

/** The needles of the map: two repeats of the card about the middle, which every bed has. */
const shown = needlesBetween(
  toNeedle(usualPlace.columnOne - dimensions.columns),
  toNeedle(usualPlace.columnOne + dimensions.columns - 1),
)

/** Lets somebody say which needle is column 1 by pressing one that came forward; its name goes into the page's field. */
export const startColumnOne = (root: HTMLDetailsElement): void => {
  const field = required(document, root.dataset.field ?? '', HTMLInputElement)
  const hole = required(root, '.hole-finder-hole', HTMLInputElement)
  const bed = required(root, '.hole-finder-bed', HTMLElement)
  const said = required(root, '.hole-finder-said', HTMLElement)
  const take = (needle: Needle): void => {
    const column = Number(hole.value)
    if (!isColumn(column)) {
      setText(said, `A card has columns 1 to ${dimensions.columns}: say in which of them the hole is.`)
      hole.focus()
      return
    }
    const { columnOne } = placeByHole(needle, column)
    field.value = needleName(columnOne)
    field.dispatchEvent(new Event('change', { bubbles: true }))
    field.form?.requestSubmit()
    setText(said, cardPlaceWords(columnOne))
  }
  const press = (needle: Needle): HTMLElement => {
    const button = element('button', { type: 'button', 'aria-pressed': 'false' }, [needleName(needle)])
    button.addEventListener('click', () => {
      for (const other of bed.children) other.setAttribute('aria-pressed', String(other === button))
      take(needle)
    })
    return button
  }
  root.addEventListener('toggle', () => {
    if (root.open && bed.children.length === 0) bed.append(...shown.map(press))
  })
}
