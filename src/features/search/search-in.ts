import MiniSearch from 'minisearch'
import type { SearchDocument } from '../../link/search-document.ts'

/** Words of questions that say nothing about what is looked for. */
const asking = new Set(
  'a an and are at be by can do does for from go goes how i in is it me my of on or should that the their there this to what when where which why will with your'.split(
    ' ',
  ),
)

/** Numbers as they are typed, by the words that the texts have for them. */
const ordinals: Readonly<Record<string, readonly string[]>> = {
  '2nd': ['second'],
  '8th': ['eighth'],
  '16th': ['sixteenth'],
  '24th': ['twenty', 'fourth'],
}

/** A word without its ending, so that skip, skips, skipped and skipping are one. */
const stemOf = (word: string): string => {
  const single = word.replace(/(?<=s|x|z|ch|sh)es$|(?<=[^s])s$/, '')
  const bare = single.replace(/(?<=[aeiouy].*[^e])(?:ing|ed)$/, '')
  const short = bare.length < 3 ? single : bare.replace(/([bdgmnpt])\1$/, '$1')
  return short.length > 3 ? short.replace(/e$/, '') : short
}

/** A word as it is kept and looked for; null for one that says nothing. */
const termsOf = (word: string): string | string[] | null => {
  const lower = word.toLowerCase()
  if (asking.has(lower)) return null
  return (ordinals[lower] ?? [lower]).map(stemOf)
}

/** A document that was found, and the words of it that were looked for, each without its ending. */
export interface Found {
  readonly document: SearchDocument
  readonly terms: readonly string[]
}

/**
 * Makes the search in these documents. It gives the best first: those that have all words that were typed, or, where none
 * has all of them, those that have some (`isPart`).
 */
export const searchIn = (
  documents: readonly SearchDocument[],
): ((words: string) => { found: Found[]; isPart: boolean }) => {
  const byId = new Map(documents.map((document) => [document.id, document]))
  const search = new MiniSearch<SearchDocument>({
    fields: ['title', 'also', 'text', 'where'],
    processTerm: termsOf,
    searchOptions: {
      prefix: (term) => term.length > 2,
      fuzzy: (term) => (term.length > 3 ? 0.2 : false),
      boost: { title: 3, also: 2 },
    },
  })
  search.addAll(documents)
  const find = (words: string, combineWith: 'AND' | 'OR'): Found[] =>
    search.search(words, { combineWith }).flatMap(({ id, terms }) => {
      const document = byId.get(String(id))
      return document ? [{ document, terms }] : []
    })
  return (words) => {
    const whole = find(words, 'AND')
    return whole.length > 0 ? { found: whole, isPart: false } : { found: find(words, 'OR'), isPart: true }
  }
}
