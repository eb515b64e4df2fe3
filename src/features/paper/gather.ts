import { dataOf, required } from '../../browser/dom.ts'
import { fetchedPage } from '../../browser/fetched-page.ts'

/** Opens the answers on a handout, or folds them away, as the box above the sheets says. */
export const foldAnswers = (sheet: ParentNode): void => {
  const box = document.querySelector<HTMLInputElement>('.handout-answers input')
  for (const answer of sheet.querySelectorAll('details')) answer.open = box?.checked ?? false
}

/** The content of a sheet's own page. Throws where that can't be fetched. */
const contentOf = async (address: string): Promise<NodeListOf<ChildNode>> =>
  required(await fetchedPage(address), '.sheet', HTMLElement).childNodes

/** Fetches a sheet's content into it. Returns whether it is there. */
const fetchSheet = async (sheet: HTMLElement): Promise<boolean> => {
  try {
    sheet.replaceChildren(...(await contentOf(dataOf(sheet, 'from'))))
  } catch {
    return false
  }
  sheet.toggleAttribute('data-here', true)
  foldAnswers(sheet)
  return true
}

/**
 * Fetches into this page what its sheets have on pages of their own, all at once. Returns how many sheets could not be
 * had: they keep their links, and the next call tries them again.
 */
export const gather = async (): Promise<number> => {
  const empty = document.querySelectorAll<HTMLElement>('.sheet[data-from]:not([data-here])')
  const here = await Promise.all([...empty].map(fetchSheet))
  return here.filter((isHere) => !isHere).length
}
