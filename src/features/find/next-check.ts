import type { Checked, SeenPass } from '../../link/session.ts'
import { allRightOf } from '../../link/bed-marks.ts'
import type { CardChoice } from '../../link/state.ts'
import { faultPhrase } from '../../words/faults.ts'
import { effortWords, nextWords } from '../../words/checks.ts'
import { changedWords, wayPhrase } from '../../words/finding.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { counted } from '../../words/lists.ts'
import { element, required, setText } from '../../browser/dom.ts'
import type { RequestedCard, CheckOutcome } from '../../find/check-outcomes.ts'
import type { NextLook } from '../../find/next.ts'
import { marksPredicted } from './marks.ts'
import type { FindStore } from './store.ts'

/** So many faults of a machine are named on a button. */
const mostNamed = 2

const cardOf = (kind: RequestedCard, store: FindStore): CardChoice => {
  const [first] = store.now().session.passes
  if (kind === 'same') return first?.card ?? store.pass().card
  return kind === 'none' ? { kind: 'none' } : { kind: 'site', id: kind }
}

/** The faults that a look at parts may find. */
const faultsOf = ({ outcomes }: NextLook): Fault[] =>
  outcomes.flatMap((outcome) => (outcome.kind === 'part' && outcome.found ? [outcome.found] : []))

/** A machine with everything that is wrong with it, in a phrase, and how many others would do the same. */
const machinePhrase = (faults: readonly Fault[], others: number): string => {
  const more = faults.length - mostNamed
  const named = wayPhrase(faults.slice(0, mostNamed)) + (more > 0 ? ` and ${more} more` : '')
  return named + (others > 0 ? `, or ${counted(others, 'other')}` : '')
}

/** What the next check is, and its outcomes as buttons. */
export const createNextCheck = (
  root: HTMLElement,
  store: FindStore,
): ((looks: readonly NextLook[]) => void) => {
  const section = required(root, '.next', HTMLElement)
  const words = required(section, '.next-words', HTMLElement)
  const time = required(section, '.next-time', HTMLElement)
  const outcomes = required(section, '.next-outcomes', HTMLElement)
  const others = required(section, '.next-others', HTMLElement)
  const list = required(others, 'ol', HTMLElement)
  const none = required(section, '.next-none', HTMLElement)
  const sign = required(root, '.now-next', HTMLElement)
  let all: readonly NextLook[] = []
  let chosen: string | null = null

  const addPass = (look: NextLook, prediction: { readonly changed: readonly number[] } | null): void => {
    if (!look.pass) return
    const { row, way, speed, card } = look.pass
    const allRight = allRightOf(store.pass().marks.length)
    const pass: SeenPass = { card: cardOf(card, store), row, way, speed, pass: null, marks: allRight }
    const marks = prediction ? marksPredicted(pass, prediction, store.library, store.now().session) : allRight
    const { passes } = store.now().session
    store.set({ passes: [...passes, { ...pass, marks }] }, passes.length)
  }
  /** Notes what was found by hand or eye: nothing at all is one null. */
  const note = (look: NextLook, found: readonly (Fault | null)[]): void => {
    chosen = null
    const checked = found.map((one): Checked => ({ check: look.check, found: one }))
    store.set({ checked: [...store.now().session.checked, ...checked] })
  }
  const take = (look: NextLook, outcome: CheckOutcome): void => {
    chosen = null
    if (outcome.kind === 'bed') addPass(look, outcome.prediction)
    else note(look, [outcome.found])
  }
  const wordsOf = (outcome: CheckOutcome): string => {
    if (outcome.kind === 'part') return outcome.found ? faultPhrase(outcome.found) : 'All is sound there'
    const [first, ...rest] = outcome.prediction.changed.length > 0 ? outcome.if : []
    const about = first ? ` (${machinePhrase(first, rest.length)})` : ''
    return changedWords(outcome.prediction.changed, store.pass().marks.length) + about
  }
  const button = (label: string, act: (event: MouseEvent) => void): HTMLElement => {
    const made = element('button', { type: 'button' }, [label])
    made.addEventListener('click', act)
    return made
  }
  /** The button goes; a keyboard goes on at what it changes, and a pointer's page stays where it is. */
  const lead = (detail: number): void => {
    required(root, '.answers-title', HTMLElement).focus({ preventScroll: detail > 0 })
  }
  /** Where a check may find several things at once: a box for each, and what was ticked goes in together. */
  const manyFound = (look: NextLook): HTMLElement[] => {
    const boxes = faultsOf(look).map((fault) => {
      const box = element('input', { type: 'checkbox' })
      return { fault, box, label: element('label', { class: 'found-box' }, [box, faultPhrase(fault)]) }
    })
    const done = button('Nothing of these: all is sound there', ({ detail }) => {
      const found = boxes.flatMap(({ fault, box }) => (box.checked ? [fault] : []))
      note(look, found.length > 0 ? found : [null])
      lead(detail)
    })
    const count = (): void => {
      const ticked = boxes.filter(({ box }) => box.checked).length
      setText(done, ticked === 0 ? 'Nothing of these: all is sound there' : `Note ${counted(ticked, 'find')}`)
    }
    for (const { box } of boxes) box.addEventListener('change', count)
    return [...boxes.map(({ label }) => label), done]
  }
  const show = (): void => {
    const look = all.find(({ check }) => check === chosen) ?? all[0]
    for (const part of section.querySelectorAll<HTMLElement>('.next-check, .next-others')) part.hidden = !look
    none.hidden = look !== undefined || !required(section, '.again', HTMLElement).hidden
    setText(sign, look ? `Next: ${nextWords(look)}` : '')
    if (!look) return
    setText(words, nextWords(look))
    setText(time, `It takes ${effortWords(look)}.`)
    for (const caution of section.querySelectorAll<HTMLElement>('[data-caution]'))
      caution.hidden = !look.cautions.some((id) => id === caution.dataset['caution'])
    const buttons =
      faultsOf(look).length > 1
        ? manyFound(look)
        : look.outcomes.map((outcome) =>
            button(wordsOf(outcome), ({ detail }) => {
              take(look, outcome)
              lead(detail)
            }),
          )
    if (look.pass)
      buttons.push(
        button('Something else: mark it on the bed', () => {
          addPass(look, null)
          root.querySelector<HTMLElement>('.needle[tabindex="0"]')?.focus()
        }),
      )
    outcomes.replaceChildren(...buttons)
    const rest = all.filter(({ check }) => check !== look.check)
    others.hidden = rest.length === 0
    list.replaceChildren(
      ...rest.map((other) => {
        const choose = button('Do this one', () => {
          chosen = other.check
          show()
          words.focus()
        })
        choose.setAttribute('aria-label', `Do this one: ${nextWords(other)}`)
        return element('li', {}, [
          element('span', {}, [`${nextWords(other)} It takes ${effortWords(other)}.`]),
          choose,
        ])
      }),
    )
  }
  return (looks) => {
    all = looks
    show()
  }
}
