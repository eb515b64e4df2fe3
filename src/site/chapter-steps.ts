import { withoutNotes } from './chapter-notes.ts'

/** A step's figure and state, as its tag in the chapter's file has them. */
export interface StepTag {
  readonly id: string
  readonly title: string
  readonly figure: string
  readonly state: string
  readonly text: string
}

/** The steps of a chapter's file, in order, with their texts as readers have them. */
export const stepTags = (body: string): StepTag[] =>
  [...withoutNotes(body).matchAll(/<Step\s+([^>]*)>([\s\S]*?)<\/Step>/g)].map(
    ([, attributes = '', text = '']) => {
      const value = (name: string): string => new RegExp(`\\b${name}="([^"]*)"`).exec(attributes)?.[1] ?? ''
      return { id: value('id'), title: value('title'), figure: value('figure'), state: value('state'), text }
    },
  )

/** The file name of the still picture of a figure in a state: the same wherever the same is shown (FNV-1a hash). */
export const stillName = (figure: string, state: string): string => {
  let hash = 0x811c9dc5
  for (const character of state) hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193) >>> 0
  return `${figure}-${hash.toString(36)}`
}
