import { required } from '../../browser/dom.ts'
import { entry } from '../../mechanism/lookup.ts'
import { holeRuns, smallCard } from '../../drawings/card/small-card.ts'
import { libraryOf } from '../../browser/library.ts'

/** Draws the cards of a choice when it is opened for the first time: nobody sees them before. */
export const drawWhenOpened = (choice: HTMLElement): void => {
  choice.addEventListener(
    'beforetoggle',
    () => {
      const { cards } = libraryOf(required(document, '.library', HTMLScriptElement).text)
      for (const path of choice.querySelectorAll<SVGPathElement>('[data-card]'))
        path.setAttribute('d', holeRuns(entry(cards, String(path.dataset.card)), smallCard.rows))
    },
    { once: true },
  )
}
