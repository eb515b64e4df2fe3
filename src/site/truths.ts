import { base } from '../link/site-path.ts'
import { type Passage, passagesOf } from './chapter-outline.ts'

/** Whether something is true of every machine of the class, of ours alone, or different from machine to machine. */
export type Holds = 'class' | 'ours' | 'differs'

/** A line of the page that says what is true of every machine, and what of ours alone. */
export interface Truth {
  readonly id: string
  readonly of: Holds
  readonly title: string
  readonly words: string
}

/** What a line's list is called where the line is alone. */
export const holdsWords: Readonly<Record<Holds, string>> = {
  class: 'True of every machine',
  ours: 'Only ours',
  differs: 'Different from machine to machine',
}

const isHolds = (text: string): text is Holds => Object.hasOwn(holdsWords, text)

/** A line from its attributes and its text. Throws where it does not say of which machines it holds. */
const truthOf = ({ attributes, words }: Passage): Truth => {
  const [id = '', of = '', title = ''] = ['id', 'of', 'title'].map((name) => attributes.get(name))
  if (!isHolds(of)) throw new Error(`the truth “${id}” holds of “${of}”`)
  return { id, of, title, words }
}

const files = import.meta.glob<string>('../../content/guide/true-of-every-machine.mdx', {
  query: '?raw',
  import: 'default',
  eager: true,
})

/** All its lines, in the order of the page. */
export const allTruths: readonly Truth[] = Object.values(files)
  .flatMap((text) => passagesOf(text, 'Truth'))
  .map(truthOf)

/** The address of one of its lines. */
export const truthAddress = (id: string): string => `${base}/true-of-every-machine/#${id}`
