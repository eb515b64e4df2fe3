import { getCollection, type CollectionEntry } from 'astro:content'
import { base } from '../link/site-path.ts'

export type Chapter = CollectionEntry<'chapters'>

/** All chapters in their order. */
export const allChapters = async (): Promise<Chapter[]> =>
  (await getCollection('chapters')).sort((a, b) => a.data.number - b.data.number)

/** A chapter's own part of its address: its file's name without the number. */
export const slugOf = (chapter: Chapter): string => chapter.id.replace(/^\d+-/, '')

/** A chapter's address on the site. */
export const addressOf = (chapter: Chapter): string => `${base}/chapters/${slugOf(chapter)}/`

/** The address of a chapter's handout. */
export const handoutAddressOf = (chapter: Chapter): string => `${base}/paper/handouts/${slugOf(chapter)}/`

/** The address of a chapter's class view; its speaker's window lies below it. */
export const classAddressOf = (chapter: Chapter): string => `${base}/class/${slugOf(chapter)}/`
