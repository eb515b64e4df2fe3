import { breathe } from '../../browser/yield-to-browser.ts'
import { required } from '../../browser/dom.ts'
import { keepThisPage } from '../offline/register.ts'
import { foldAnswers } from './answers.ts'

const unreached = 'It could not be brought here: the network may be away. Print tries again.'

/** What stands on a sheet's own page. Throws where that can't be had. */
const contentOf = async (address: string): Promise<NodeListOf<ChildNode>> => {
  const answer = await fetch(address)
  if (!answer.ok) throw new Error(`${address}: ${answer.status}`)
  const page = new DOMParser().parseFromString(await answer.text(), 'text/html')
  return required(page, '.sheet', HTMLElement).childNodes
}

const bring = async (): Promise<void> => {
  for (const sheet of document.querySelectorAll<HTMLElement>('.sheet[data-from]:not([data-here])')) {
    try {
      sheet.replaceChildren(...(await contentOf(sheet.dataset.from ?? '')))
      sheet.toggleAttribute('data-here', true)
      foldAnswers(sheet)
    } catch {
      required(sheet, '[role="status"]', HTMLElement).textContent = unreached
    }
    await breathe()
  }
  // With the pictures that came along; until the site's worker is there, printing must not wait.
  void keepThisPage()
}

let going: Promise<void> = Promise.resolve()

/**
 * Brings what stands on pages of its own onto the sheets of this one, in their order. A sheet whose page can't be had
 * says so; the next call tries it again.
 */
export const gather = (): Promise<void> => (going = going.then(bring))
