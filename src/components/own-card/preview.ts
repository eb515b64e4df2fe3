import { type Card, hasHole } from '../../mechanism/card.ts'
import { dimensions } from '../../mechanism/dimensions.ts'

const { columns } = dimensions

/** The holes of a card as runs of a line as wide as a row, row 1 at the bottom. */
const pathOf = (card: Card): string =>
  card
    .flatMap((row, n) =>
      Array.from({ length: columns }, (_, c) =>
        hasHole(row, c + 1) ? `M${c},${card.length - n - 0.5}h1` : '',
      ),
    )
    .join('')

/** Shows a card small in a picture of the page; nothing where there are no rows. */
export const showPreview = (svg: SVGSVGElement, card: Card): void => {
  svg.toggleAttribute('hidden', card.length === 0)
  svg.setAttribute('viewBox', `0 0 ${columns} ${Math.max(1, card.length)}`)
  svg.querySelector('path')?.setAttribute('d', pathOf(card))
}
