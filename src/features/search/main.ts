import MiniSearch from 'minisearch'
import { element, required } from '../../browser/dom.ts'
import type { SearchDocument } from '../../link/search-document.ts'

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
  const search = new MiniSearch<SearchDocument>({
    fields: ['title', 'text', 'where'],
    storeFields: ['title', 'where', 'text', 'address'],
    searchOptions: { prefix: true, fuzzy: 0.2, boost: { title: 3 }, combineWith: 'AND' },
  })
  search.addAll(documents)
  const input = required(root, 'input', HTMLInputElement)
  const list = required(root, '.results', HTMLElement)
  const count = required(root, '.count', HTMLElement)
  const show = (): void => {
    const words = input.value.trim()
    const url = new URL(location.href)
    if (words === '') url.searchParams.delete('q')
    else url.searchParams.set('q', words)
    history.replaceState(null, '', url)
    const found = words === '' ? [] : search.search(words).slice(0, mostResults)
    list.replaceChildren(
      ...found.map((result) => {
        const { title, where, text, address } = result as unknown as SearchDocument
        return element('li', {}, [
          element('a', { href: address }, [title]),
          element('p', { class: 'small' }, [where]),
          element('p', {}, [excerpt(text, words.toLowerCase().split(/\s+/))]),
        ])
      }),
    )
    count.textContent =
      words === ''
        ? ''
        : found.length === 0
          ? 'Nothing found. Try one word, or the part’s name.'
          : `${found.length} found`
  }
  // What was typed before the scripts arrived stays.
  if (input.value === '') input.value = new URL(location.href).searchParams.get('q') ?? ''
  input.addEventListener('input', show)
  required(root, 'form', HTMLFormElement).addEventListener('submit', (event) => {
    event.preventDefault()
  })
  show()
}
