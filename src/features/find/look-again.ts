import { allRight } from '../../link/bed-marks.ts'
import { answerTitle, passPhrase } from '../../words/finding.ts'
import { noExplanationWords, doubtWords } from '../../words/no-explanation.ts'
import { element, required, tell } from '../../browser/dom.ts'
import type { Answer } from '../../find/messages.ts'
import { misfits } from './marks.ts'
import type { FindStore } from './store.ts'

/** One pass that the nearest explanation does not meet: which, and the needles that speak against it, by index. */
interface Doubt {
  readonly at: number
  readonly needles: readonly number[]
}

/** The passes that fit the nearest explanation least, the worst first. */
const doubtsOf = (nearest: Answer, store: FindStore): Doubt[] =>
  store
    .now()
    .session.passes.flatMap((pass, at): Doubt[] => {
      const prediction = nearest.shown?.[at]
      const needles = prediction ? misfits(pass, prediction, store.library, store.now().session) : []
      return needles.length > 0 ? [{ at, needles }] : []
    })
    .sort((one, other) => other.needles.length - one.needles.length)

/** Where nothing explains what was noted: which needles to look at again, pass by pass, and a fresh note of each. */
export const createLookAgain = (
  root: HTMLElement,
  store: FindStore,
  pointAt: (needles: readonly number[]) => void,
): ((nearest: Answer) => void) => {
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
      store.setPass({ marks: allRight })
      pointAt([])
      root.querySelector<HTMLElement>('.needle[tabindex="0"]')?.focus()
    })
    for (const button of [show, renew]) button.setAttribute('aria-label', `${button.textContent}: ${name}`)
    return element('li', {}, [
      element('p', {}, [doubtWords(name, needles)]),
      element('div', { class: 'finding-buttons' }, [show, renew]),
    ])
  }
  return (nearest) => {
    const words = noExplanationWords(
      answerTitle({ ...nearest, isHidden: false }),
      store.now().session.isRough,
    )
    tell(required(section, '.again-lead', HTMLElement), words.lead)
    tell(required(section, '.again-nearest', HTMLElement), words.nearest)
    tell(required(section, '.again-else', HTMLElement), words.otherwise)
    list.replaceChildren(...doubtsOf(nearest, store).flatMap((doubt) => item(doubt) ?? []))
  }
}
