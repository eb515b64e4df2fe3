import type { SearchDocument } from '../link/search-document.ts'
import { base } from '../link/site-path.ts'
import { getCollection } from 'astro:content'
import { faultWords } from '../words/faults.ts'
import { outlineOf } from './chapter-outline.ts'
import { addressOf, allChapters, outlineOfChapter } from './chapters.ts'
import { allFaults, faultAddress } from './faults.ts'
import { searchedPages } from './searched-pages.ts'
import { allTruths, holdsWords, truthAddress } from './truths.ts'

/**
 * Everything on the site that a search may find: steps, terms, faults, what is true of every machine or only ours, and the
 * pages that are none of those.
 */
export const searchDocuments = async (): Promise<SearchDocument[]> => {
  const chapters = (await allChapters()).flatMap((chapter) =>
    outlineOfChapter(chapter).steps.map(({ id, title, words }) => ({
      id: `${chapter.id}-${id}`,
      title,
      where: `Chapter ${chapter.data.number}, ${chapter.data.title}`,
      text: words,
      also: '',
      address: `${addressOf(chapter)}?step=${id}#${id}`,
    })),
  )
  const terms = (await getCollection('glossary')).map((entry) => ({
    id: `term-${entry.id}`,
    title: entry.data.term,
    where: 'Glossary',
    text: `${entry.data.also?.join(', ') ?? ''} ${outlineOf(entry.body ?? '').words}`.trim(),
    also: entry.data.searched?.join(', ') ?? '',
    address: `${base}/glossary/#${entry.id}`,
  }))
  const faults = (await allFaults()).map(({ kind, body, data }) => ({
    id: `fault-${kind}`,
    title: faultWords[kind].title,
    where: 'Fault',
    text: [
      `Shows as ${faultWords[kind].shows}.`,
      outlineOf(body ?? '').words,
      ...data.outside,
      ...data.inside,
      ...data.mend,
    ].join(' '),
    also: data.searched?.join(', ') ?? '',
    address: faultAddress(kind),
  }))
  const truths = allTruths.map(({ id, of, title, words }) => ({
    id: `truth-${id}`,
    title,
    where: holdsWords[of],
    text: words,
    also: '',
    address: truthAddress(id),
  }))
  const pages = searchedPages.map(({ address, ...page }) => ({
    ...page,
    id: `page-${address}`,
    where: 'Page',
    address: `${base}/${address}`,
  }))
  return [...chapters, ...terms, ...faults, ...truths, ...pages]
}
