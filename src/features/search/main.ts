import { element, required } from '../../browser/dom.ts'
import type { SearchDocument } from '../../link/search-document.ts'
import { searchIn } from './search-in.ts'

/** The most results that are shown. */
const mostResults = 20

/** A result's text around the first word found. */
const excerpt = (text: string, words: readonly string[]): string => {
  const place = Math.min(
    ...words.map((word) => text.toLowerCase().indexOf(word)).filter((n) => n >= 0),
    text.length,
  )
  const start = place === text.length || place < 60 ? 0 : text.indexOf(' ', place - 60) + 1
  return `${start > 0 ? '…' : ''}${text.slice(start, start + 180)}${start + 180 < text.length ? '…' : ''}`
}

/** Searches the documents in the page while the reader types. The words are kept in the address, so that a search can be linked. */
export const startSearch = (root: HTMLElement): void => {
  const documents = JSON.parse(required(root, '.documents', HTMLScriptElement).text) as SearchDocument[]
  const search = searchIn(documents)
  const input = required(root, 'input', HTMLInputElement)
  const list = required(root, '.results', HTMLElement)
  const count = required(root, '.count', HTMLElement)
  const sought = required(root, '.sought', HTMLElement)
  const show = (): void => {
    const words = input.value.trim()
    sought.hidden = words !== ''
    const url = new URL(location.href)
    if (words === '') url.searchParams.delete('q')
    else url.searchParams.set('q', words)
    history.replaceState(null, '', url)
    const { found: all, isPart } = search(words)
    const found = all.slice(0, mostResults)
    list.replaceChildren(
      ...found.map(({ document: { title, where, text, address }, terms }) =>
        element('li', {}, [
          element('a', { href: address }, [title]),
          element('p', { class: 'small' }, [where]),
          element('p', {}, [excerpt(text, terms)]),
        ]),
      ),
    )
    count.textContent =
      words === ''
        ? ''
        : found.length === 0
          ? 'Nothing found. Try one word, or the part’s name.'
          : `${found.length} found${isPart ? ' with some of these words, none with all' : ''}`
  }
  // What was typed before the scripts arrived stays.
  if (input.value === '') input.value = new URL(location.href).searchParams.get('q') ?? ''
  input.addEventListener('input', show)
  required(root, 'form', HTMLFormElement).addEventListener('submit', (event) => {
    event.preventDefault()
  })
  show()
}
