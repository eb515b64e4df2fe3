import { holeRuns, smallCard } from '../../drawings/card/small-card.ts'
import { libraryOf } from '../../browser/library.ts'

/** Draws the cards of a choice when it is opened for the first time: nobody sees them before. */
export const drawWhenOpened = (choice: HTMLElement): void => {
  choice.addEventListener(
    'beforetoggle',
    () => {
      const { cards } = libraryOf(document.querySelector('.library')?.textContent ?? '')
      for (const path of choice.querySelectorAll<SVGPathElement>('[data-card]'))
        path.setAttribute('d', holeRuns(cards.get(path.dataset.card ?? '') ?? [0], smallCard.rows))
    },
    { once: true },
  )
}
