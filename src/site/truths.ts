import { type CollectionEntry, getCollection } from 'astro:content'
import { base } from '../link/site-path.ts'

/** A line of the page that says what is true of every machine and what of ours alone. */
export type Truth = CollectionEntry<'truths'>

/** The address of the page that says what is true of every machine, and what of ours alone. */
export const truthsAddress = `${base}/true-of-every-machine/`

/** The address of one of its lines. */
export const truthAddress = (id: string): string => `${truthsAddress}#${id}`

/** All lines, in the order in which they are told. */
export const allTruths = async (): Promise<Truth[]> =>
  (await getCollection('truths')).sort((a, b) => a.data.order - b.data.order)
