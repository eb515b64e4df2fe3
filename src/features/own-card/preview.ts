import { holeRuns, smallCard } from '../../drawings/card/small-card.ts'
import type { Card } from '../../mechanism/card.ts'

/** Shows a card small in a picture of the page; nothing where there are no rows. */
export const showPreview = (svg: SVGSVGElement, card: Card): void => {
  svg.toggleAttribute('hidden', card.length === 0)
  svg.setAttribute('viewBox', `0 0 ${smallCard.columns} ${Math.max(1, card.length)}`)
  svg.querySelector('path')?.setAttribute('d', holeRuns(card, card.length))
}
