import { stepTags } from './chapter-steps.ts'
import { allChapters, classAddressOf, slugOf } from './chapters.ts'

/** The class view's address of a step that is named as `the-hold/dip`. Throws where there is no such step. */
export const classAddress = async (place: string): Promise<string> => {
  const [slug = '', id = ''] = place.split('/')
  const chapter = (await allChapters()).find((each) => slugOf(each) === slug)
  if (!chapter) throw new Error(`there is no chapter “${slug}”`)
  if (!stepTags(chapter.body ?? '').some((step) => step.id === id))
    throw new Error(`the chapter “${slug}” has no step “${id}”`)
  return `${classAddressOf(chapter)}?step=${id}`
}
