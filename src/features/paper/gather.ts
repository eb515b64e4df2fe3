import { breathe } from '../../browser/yield-to-browser.ts'
import { dataOf, required } from '../../browser/dom.ts'
import { keepThisPage } from '../offline/index.ts'

/** Opens the answers on a handout, or folds them away, as the box above the sheets says. */
export const foldAnswers = (sheet: ParentNode): void => {
  const box = document.querySelector<HTMLInputElement>('.handout-answers input')
  for (const answer of sheet.querySelectorAll('details')) answer.open = box?.checked ?? false
}

const unreached = 'It could not be brought here: the network may be away. Print tries again.'

/** The content of a sheet's own page. Throws where that can't be fetched. */
const contentOf = async (address: string): Promise<NodeListOf<ChildNode>> => {
  const answer = await fetch(address)
  if (!answer.ok) throw new Error(`${address}: ${answer.status}`)
  const page = new DOMParser().parseFromString(await answer.text(), 'text/html')
  return required(page, '.sheet', HTMLElement).childNodes
}

/** Fetches the content of each sheet that is still without it. */
const fetchSheets = async (): Promise<void> => {
  for (const sheet of document.querySelectorAll<HTMLElement>('.sheet[data-from]:not([data-here])')) {
    try {
      sheet.replaceChildren(...(await contentOf(dataOf(sheet, 'from'))))
      sheet.toggleAttribute('data-here', true)
      foldAnswers(sheet)
    } catch {
      required(sheet, '[role="status"]', HTMLElement).textContent = unreached
    }
    await breathe()
  }
  // With the pictures that came along. Printing must not wait for the site's worker.
  void keepThisPage()
}

let running: Promise<void> = Promise.resolve()

/**
 * Fetches the sheets that are on pages of their own into this page, in their order. A sheet whose page can't be fetched
 * says so; the next call tries it again.
 */
export const gather = (): Promise<void> => (running = running.then(fetchSheets))
