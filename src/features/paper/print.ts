import { yieldToBrowser } from '../../browser/yield-to-browser.ts'
import { required, setText } from '../../browser/dom.ts'
import { counted, listed } from '../../words/lists.ts'
import { keepThisPage } from '../offline/index.ts'
import { gather } from './gather.ts'

/** Fetches a picture, also one that could not be had before. Resolves once it is there, or can't be had. */
const arrived = (image: HTMLImageElement): Promise<boolean> => {
  image.loading = 'eager'
  if (image.complete) {
    if (image.naturalWidth > 0) return Promise.resolve(true)
    const { src } = image
    image.src = src
  }
  return new Promise((done) => {
    image.addEventListener('load', () => done(true), { once: true })
    image.addEventListener('error', () => done(false), { once: true })
  })
}

/** Fetches all pictures of the page, seen or not. Returns how many could not be had. */
const fetchPictures = async (): Promise<number> => {
  const arrivals: Promise<boolean>[] = []
  for (const image of document.images) {
    arrivals.push(arrived(image))
    // To begin all in one go would hold a phone up.
    await yieldToBrowser()
  }
  return (await Promise.all(arrivals)).filter((isHere) => !isHere).length
}

const fetching = 'Fetching all that this page prints.'

/** What the page says once all has been tried, of the sheets and pictures that could not be had. */
const fetchedWords = (sheets: number, pictures: number): string => {
  const missing = [
    ...(sheets > 0 ? [counted(sheets, 'handout')] : []),
    ...(pictures > 0 ? [counted(pictures, 'picture')] : []),
  ]
  return missing.length > 0
    ? `${listed(missing)} could not be fetched. Print tries again.`
    : `Ready to print: all ${counted(document.images.length, 'picture')} are here.`
}

const fetchMissing = async (): Promise<void> => {
  const paper = required(document, '.paper', HTMLElement)
  const said = paper.querySelector('.paper-said')
  // A page without pictures has all from the first.
  if (!said || paper.hasAttribute('data-whole')) return
  setText(said, fetching)
  const sheets = await gather()
  const pictures = await fetchPictures()
  // Until then, the print says at its top that something is missing.
  paper.toggleAttribute('data-whole', sheets + pictures === 0)
  setText(said, fetchedWords(sheets, pictures))
  // With what came along. Printing must not wait for the site's worker.
  void keepThisPage()
}

let running: Promise<void> = Promise.resolve()

/** Fetches all that the page prints, so that the browser's own command prints it too; and says when it is there. */
export const fetchAll = (): Promise<void> => (running = running.then(fetchMissing))

/** Prints the page once all has been fetched that can be. */
export const printWhole = async (): Promise<void> => {
  await fetchAll()
  print()
}
