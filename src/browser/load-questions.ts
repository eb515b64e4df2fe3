import type { Makers } from '../lesson/question.ts'

const files = import.meta.glob<{ makers: Makers }>('../lesson/chapters/*.ts')

/** Loads a chapter's makers of questions; none where there is no such chapter. */
export const loadMakers = async (chapter: number): Promise<Makers> => {
  const file = files[`../lesson/chapters/chapter-${chapter}.ts`]
  return file ? (await file()).makers : {}
}
