import { base } from '../link/site-path.ts'
import { getCollection } from 'astro:content'
import { faultKinds, type FaultKindName } from '../mechanism/fault-kinds.ts'
import { faultWords } from '../words/faults.ts'
import { type FactName, facts, inWords } from '../words/facts.ts'
import { stepTags } from './chapter-steps.ts'
import { addressOf, allChapters } from './chapters.ts'
import { faultAddress } from './faults.ts'

/** One thing that a search may find. */
export interface Found {
  readonly id: string
  readonly title: string
  readonly where: string
  readonly text: string
  readonly address: string
}

/** A chapter's text as it reads: numbers put in, marks taken out. */
const plainText = (mdx: string): string =>
  mdx
    .replace(/<N\s+of="(\w+)"(\s+words)?\s*\/>/g, (_, of: string, words?: string) => {
      const value = facts[of as FactName]
      return words ? inWords(Number(value)) : value
    })
    .replace(/<\/?(Term|Go|N|Source)\b[^>]*>/g, '')
    .replace(/<[^>]*>|[*_#`]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()

/** Everything on the site that a search may find: steps, terms and faults. */
export const searchDocuments = async (): Promise<Found[]> => {
  const chapters = (await allChapters()).flatMap((chapter) =>
    stepTags(chapter.body ?? '').map(({ id, title, text }) => ({
      id: `${chapter.id}-${id}`,
      title,
      where: `Chapter ${chapter.data.number}, ${chapter.data.title}`,
      text: plainText(text),
      address: `${addressOf(chapter)}?step=${id}#${id}`,
    })),
  )
  const terms = (await getCollection('glossary')).map((entry) => ({
    id: `term-${entry.id}`,
    title: entry.data.term,
    where: 'Glossary',
    text: `${entry.data.also?.join(', ') ?? ''} ${plainText(entry.body ?? '')}`.trim(),
    address: `${base}/glossary/#${entry.id}`,
  }))
  const faults = (Object.keys(faultKinds) as FaultKindName[]).map((kind) => ({
    id: `fault-${kind}`,
    title: faultWords[kind].title,
    where: 'Fault',
    text: `Shows as ${faultWords[kind].shows}.`,
    address: faultAddress(kind),
  }))
  return [...chapters, ...terms, ...faults]
}
