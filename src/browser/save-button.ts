import { required } from './dom.ts'

/** The button of a page's part that saves its figure: what does it is fetched when it is pressed, and `say` has the words where it does not come. */
export const bindSaveButton = (
  root: HTMLElement,
  save: () => Promise<void>,
  say: (words: string) => void,
): void => {
  required(root, '.save-figure', HTMLButtonElement).addEventListener('click', () => {
    save().catch(() => {
      say('The part of this site that saves pictures did not arrive. Try again.')
    })
  })
}
