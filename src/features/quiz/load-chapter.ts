import type { Makers } from '../../lesson/question.ts'

const files = import.meta.glob<{ makers: Makers }>('../../lesson/chapters/*.ts')

/** Fetches a chapter's makers; none where there is no such chapter. */
export const loadChapter = async (chapter: number): Promise<Makers> => {
  const file = files[`../../lesson/chapters/chapter-${chapter}.ts`]
  return file ? (await file()).makers : {}
}
