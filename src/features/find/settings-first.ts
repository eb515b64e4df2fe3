import type { MachinePlace } from '../../find/view.ts'
import { type SeenPass } from '../../link/session.ts'
import type { CardLibrary } from '../../link/state.ts'
import { required } from '../../browser/dom.ts'
import { expectedIn, notedIn } from './marks.ts'
import type { FindStore } from './store.ts'

/** Whether the needles looked at in a pass were all left plain, or all selected, though the card asked for both; else null. */
export const sameAllOver = (
  pass: SeenPass,
  library: CardLibrary,
  place: MachinePlace,
): 'nothing' | 'everything' | null => {
  const expected = expectedIn(pass, library, place)
  const looked = notedIn(pass, library, place).flatMap((noted, n) =>
    noted === 'unseen' ? [] : [{ noted, asked: expected[n] }],
  )
  const all = (outcome: 'plain' | 'selected'): boolean =>
    looked.every(({ noted }) => noted === outcome) && looked.some(({ asked }) => asked !== outcome)
  if (looked.length < 2) return null
  if (all('plain')) return 'nothing'
  return all('selected') ? 'everything' : null
}

/** Says which settings to rule out first, where nothing or everything was selected in a pass. */
export const bindSettingsFirst = (root: HTMLElement, store: FindStore): void => {
  const section = required(root, '.settings-first', HTMLElement)
  const sheet = required(section, 'a', HTMLElement)
  store.subscribe(({ session }) => {
    const { passes } = session
    const seen = passes
      .map((pass) => sameAllOver(pass, store.library, session))
      .find((sight) => sight !== null)
    section.hidden = seen === undefined
    for (const words of section.querySelectorAll<HTMLElement>('[data-sight]'))
      words.hidden = words.dataset['sight'] !== seen
    sheet.hidden = seen !== 'nothing'
  })
}
