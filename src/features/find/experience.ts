import { dataOf, element, required } from '../../browser/dom.ts'
import { notedJob } from '../../browser/noted-job.ts'
import { type Experience, findsOf } from '../../find/experience.ts'
import type { CardLibrary } from '../../link/state.ts'
import { counted } from '../../words/lists.ts'
import { countedExperience, openShelf } from '../job/index.ts'

/** Her experience of finished jobs but the current one, which the page says that it counts; null where there is none. */
export const loadExperience = async (root: HTMLElement, library: CardLibrary): Promise<Experience | null> => {
  const experience = await countedExperience(await openShelf(), library, notedJob()?.id ?? null)
  const finds = findsOf(experience)
  if (finds === 0) return null
  const said = required(root, '.find-experience', HTMLElement)
  said.replaceChildren(
    `What you found at other machines counts beforehand: ${counted(finds, 'find')}. It is switched on and off among the `,
    element('a', { href: `${dataOf(root, 'base')}/job/` }, ['jobs']),
    '.',
  )
  said.hidden = false
  return experience
}
