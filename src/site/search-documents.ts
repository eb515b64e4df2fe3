import type { SearchDocument } from '../link/search-document.ts'
import { base } from '../link/site-path.ts'
import { getCollection } from 'astro:content'
import { faultKinds, type FaultKindName } from '../mechanism/fault-kinds.ts'
import { faultWords } from '../words/faults.ts'
import { outlineOf } from './chapter-outline.ts'
import { addressOf, allChapters, outlineOfChapter } from './chapters.ts'
import { faultAddress } from './faults.ts'
import { allTruths, holdsWords, truthAddress } from './truths.ts'

/** Everything on the site that a search may find: steps, terms, faults, and what is true of every machine or only ours. */
export const searchDocuments = async (): Promise<SearchDocument[]> => {
  const chapters = (await allChapters()).flatMap((chapter) =>
    outlineOfChapter(chapter).steps.map(({ id, title, words }) => ({
      id: `${chapter.id}-${id}`,
      title,
      where: `Chapter ${chapter.data.number}, ${chapter.data.title}`,
      text: words,
      address: `${addressOf(chapter)}?step=${id}#${id}`,
    })),
  )
  const terms = (await getCollection('glossary')).map((entry) => ({
    id: `term-${entry.id}`,
    title: entry.data.term,
    where: 'Glossary',
    text: `${entry.data.also?.join(', ') ?? ''} ${outlineOf(entry.body ?? '').words}`.trim(),
    address: `${base}/glossary/#${entry.id}`,
  }))
  const faults = (Object.keys(faultKinds) as FaultKindName[]).map((kind) => ({
    id: `fault-${kind}`,
    title: faultWords[kind].title,
    where: 'Fault',
    text: `Shows as ${faultWords[kind].shows}.`,
    address: faultAddress(kind),
  }))
  const truths = allTruths.map(({ id, of, title, words }) => ({
    id: `truth-${id}`,
    title,
    where: holdsWords[of],
    text: words,
    address: truthAddress(id),
  }))
  return [...chapters, ...terms, ...faults, ...truths]
}
