import { allRightOf } from '../../link/bed-marks.ts'
import { passPhrase } from '../../words/finding.ts'
import { doubtfulNotesWords, doubtWords } from '../../words/no-explanation.ts'
import { element, required, setText } from '../../browser/dom.ts'
import type { Unexplained } from '../../find/finding.ts'
import type { FindStore } from './store.ts'

/** One pass with needles whose notes are likelier slips: which, and the needles, by index. */
interface Doubt {
  readonly at: number
  readonly needles: readonly number[]
}

/** The passes with notes that nothing explains, the one with the most first. */
const doubtsOf = (unexplained: readonly Unexplained[]): Doubt[] =>
  [...Map.groupBy(unexplained, ({ pass }) => pass)]
    .map(([at, notes]) => ({ at, needles: notes.map(({ needle }) => needle) }))
    .sort((one, other) => other.needles.length - one.needles.length)

/** Where notes are likelier slips: which needles to look at again, pass by pass, and a fresh note of each. */
export const createLookAgain = (
  root: HTMLElement,
  store: FindStore,
  pointAt: (needles: readonly number[]) => void,
): ((unexplained: readonly Unexplained[]) => void) => {
  const section = required(root, '.again', HTMLElement)
  const list = required(section, '.again-passes', HTMLElement)
  const item = ({ at, needles }: Doubt): HTMLElement | null => {
    const pass = store.now().session.passes[at]
    if (!pass) return null
    const name = passPhrase(pass.row, pass.way, pass.speed)
    const show = element('button', { type: 'button' }, ['Show them'])
    show.addEventListener('click', () => {
      store.set({}, at)
      pointAt(needles)
    })
    const renew = element('button', { type: 'button' }, ['Note this pass again'])
    renew.addEventListener('click', () => {
      store.set({}, at)
      store.setPass({ marks: allRightOf(store.pass().marks.length) })
      pointAt([])
      root.querySelector<HTMLElement>('.needle[tabindex="0"]')?.focus()
    })
    for (const button of [show, renew]) button.setAttribute('aria-label', `${button.textContent}: ${name}`)
    return element('li', {}, [
      element('p', {}, [doubtWords(name, needles)]),
      element('div', { class: 'finding-buttons' }, [show, renew]),
    ])
  }
  return (unexplained) => {
    const words = doubtfulNotesWords(unexplained.length, store.now().session.isRough)
    setText(required(section, '.again-lead', HTMLElement), words.lead)
    setText(required(section, '.again-else', HTMLElement), `${words.why} ${words.otherwise}`)
    list.replaceChildren(...doubtsOf(unexplained).flatMap((doubt) => item(doubt) ?? []))
  }
}
