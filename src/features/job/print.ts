import { required } from '../../browser/dom.ts'

/** What is printed of a job: the card that stays with the machine, or the sheet for its owner. */
type Printed = 'card' | 'sheet'

/** The two buttons that print; `ready` shows all that the job's card has, and resolves once it is there. */
export const bindPrint = (root: HTMLElement, ready: () => Promise<void>): void => {
  const bind = (selector: string, what: Printed): void => {
    required(root, selector, HTMLButtonElement).addEventListener('click', () => {
      root.dataset['prints'] = what
      void ready().then(() => {
        print()
      })
    })
  }
  bind('.job-print', 'card')
  bind('.job-print-sheet', 'sheet')
  addEventListener('afterprint', () => {
    delete root.dataset['prints']
  })
}
