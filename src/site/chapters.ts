import { getCollection, type CollectionEntry } from 'astro:content'
import { base } from '../link/site-path.ts'
import { type Outline, outlineOf } from './chapter-outline.ts'

export type Chapter = CollectionEntry<'chapters'>

/** All chapters in their order. */
export const allChapters = async (): Promise<Chapter[]> =>
  (await getCollection('chapters')).sort((a, b) => a.data.number - b.data.number)

/** A chapter's steps, components and words. Throws where its file has no text: it is ours. */
export const outlineOfChapter = ({ body, data }: Chapter): Outline => {
  if (body === undefined) throw new Error(`chapter ${data.number} has no text`)
  return outlineOf(body)
}

/** A chapter's own part of its address: its file's name without the number. */
export const slugOf = (chapter: Chapter): string => chapter.id.replace(/^\d+-/, '')

/** A chapter's address on the site. */
export const addressOf = (chapter: Chapter): string => `${base}/chapters/${slugOf(chapter)}/`

/** The address of a chapter's handout. */
export const handoutAddressOf = (chapter: Chapter): string => `${base}/paper/handouts/${slugOf(chapter)}/`

/** The address of a chapter's class view; its speaker's window is below it. */
export const classAddressOf = (chapter: Chapter): string => `${base}/class/${slugOf(chapter)}/`

/** The chapter and the id of a step that is named as `the-hold/dip`. Throws where there is no such step. */
const stepNamed = async (name: string): Promise<{ chapter: Chapter; id: string }> => {
  const [slug = '', id = ''] = name.split('/')
  const chapter = (await allChapters()).find((each) => slugOf(each) === slug)
  if (!chapter) throw new Error(`there is no chapter “${slug}”`)
  if (!outlineOfChapter(chapter).steps.some((step) => step.id === id))
    throw new Error(`the chapter “${slug}” has no step “${id}”`)
  return { chapter, id }
}

/** The class view's address of a step that is named as `the-hold/dip`. Throws where there is no such step. */
export const classAddressOfStep = async (name: string): Promise<string> => {
  const { chapter, id } = await stepNamed(name)
  return `${classAddressOf(chapter)}?step=${id}`
}

/** The number of the chapter, and the address in it, of a step that is named as `the-hold/dip`. Throws where there is no such step. */
export const placeOfStep = async (name: string): Promise<{ chapter: number; address: string }> => {
  const { chapter, id } = await stepNamed(name)
  return { chapter: chapter.data.number, address: `${addressOf(chapter)}?step=${id}#${id}` }
}
