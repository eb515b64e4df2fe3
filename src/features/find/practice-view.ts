import { isPractised, type SeenPass, type Session } from '../../link/session.ts'
import { emptySession } from '../../link/session-link.ts'
import { limits } from '../../link/state.ts'
import { passesMinutes } from '../../find/pass-time.ts'
import { costWords } from '../../words/best-course.ts'
import { element, required, setText } from '../../browser/dom.ts'
import type { Answer, CourseMessage } from '../../find/messages.ts'
import { queryOf } from './session-query.ts'
import { type DealtMachine, levels } from '../../find/deal-machine.ts'
import { practisedMachine } from '../../find/practice.ts'
import { taskWords } from '../../words/practice.ts'
import { courseParts } from './practice-course.ts'
import { bindGuess } from './practice-guess.ts'
import { createNamedFaults } from './practice-named.ts'
import { newAmong, verdictOnMany, verdictOnOne } from './practice-verdict.ts'
import type { FindStore } from './store.ts'

/** The practice: it deals machines, and shows what it has of the worker's answers. */
export interface PracticeView {
  /** Deals another machine, and leads to its heading. */
  readonly begin: () => void
  readonly showAnswers: (answers: readonly Answer[]) => void
  readonly showCourse: (course: CourseMessage) => void
}

/** Which machine is practised on, as a text that is another for each; null where the machine is a real one. */
const machineOf = ({ practice, deal, level }: Session): string | null =>
  deal !== null ? `deal ${deal} ${level}` : practice === null ? null : `practice ${practice}`

/** A machine to practise on: passes are asked for, and then it is said what is broken. */
export const createPractice = (
  root: HTMLElement,
  store: FindStore,
  askCourse: (machine: DealtMachine) => void,
): PracticeView => {
  const section = required(root, '.practice', HTMLElement)
  const form = required(section, 'form', HTMLFormElement)
  const guessFields = bindGuess(form)
  const said = required(section, '.practice-said', HTMLElement)
  const course = required(section, '.practice-course', HTMLElement)
  const many = required(section, '.practice-many', HTMLElement)
  const named = createNamedFaults(required(many, '.practice-named', HTMLElement), guessFields.focus)
  const submit = required(form, 'button', HTMLButtonElement)
  let answers: readonly Answer[] = []
  let seed: string | null = null

  const reveal = (isOver: boolean): void => {
    root.toggleAttribute('data-hides', isPractised(store.now().session) && !isOver)
    course.hidden = !isOver
  }
  const levelNow = (): Session['level'] => {
    const chosen = section.querySelector<HTMLInputElement>('input[name="level"]:checked')?.value
    return levels.find((level) => String(level) === chosen) ?? 1
  }
  const begin = (deal: number | null): void => {
    // The machine dealt is on the bed that the reader has set.
    const { columnOne } = store.now().session
    store.set({ ...emptySession(store.library), columnOne, deal, level: levelNow() }, 0)
  }
  /** Every pass of this practice that was shown: one that is taken back was seen all the same. */
  let shown: readonly SeenPass[] = []
  const seen = (): string =>
    costWords(shown.length, passesMinutes(queryOf({ ...store.now().session, passes: shown }, store.library)))
  const random = (): number => Math.floor(Math.random() * (limits.seed[1] + 1))

  const finish = (machine: DealtMachine, words: string): void => {
    said.textContent = words
    course.replaceChildren(element('p', {}, ['The best course is being computed.']))
    askCourse(machine)
    reveal(true)
  }
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    const { session } = store.now()
    const machine = practisedMachine(session)
    if (machine === null) return
    const guess = guessFields.read()
    if (typeof guess === 'string') {
      said.textContent = guess
      return
    }
    const [truth, ...others] = machine.faults
    if (truth && others.length === 0)
      finish(machine, verdictOnOne({ guess, truth, answers, passes: session.passes.length, cost: seen() }))
    else {
      said.textContent = ''
      named.add(guess)
    }
  })
  required(many, '.practice-all', HTMLButtonElement).addEventListener('click', () => {
    const { session } = store.now()
    const machine = practisedMachine(session)
    if (machine === null) return
    const verdict = verdictOnMany(named.all(), machine, queryOf(session, store.library))
    finish(machine, `${verdict} You have seen ${seen()} of work.`)
  })
  for (const level of section.querySelectorAll<HTMLInputElement>('input[name="level"]'))
    level.addEventListener('change', () => {
      begin(random())
    })
  required(section, '.practice-stop', HTMLButtonElement).addEventListener('click', () => {
    begin(null)
    required(root, '.answers-title', HTMLElement).focus()
  })
  store.subscribe(({ session }) => {
    const { passes } = session
    const machine = machineOf(session)
    section.hidden = machine === null
    root.toggleAttribute('data-practising', machine !== null)
    if (machine !== seed) shown = []
    shown = [...shown, ...newAmong(passes, shown)]
    setText(required(section, '.practice-count', HTMLElement), `You have seen ${seen()} of work.`)
    if (machine === seed) return
    seed = machine
    said.textContent = ''
    named.clear()
    const { level } = session
    const isMany = session.deal !== null && level > 1
    many.hidden = !isMany
    setText(submit, isMany ? 'Name it' : 'Say so')
    setText(required(section, '.practice-task', HTMLElement), taskWords(isMany ? level : 1))
    for (const input of section.querySelectorAll<HTMLInputElement>('input[name="level"]'))
      input.checked = input.value === String(isMany ? level : 1)
    reveal(false)
  })
  return {
    begin() {
      begin(random())
      required(section, 'h2', HTMLElement).focus()
    },
    showAnswers: (ranked) => {
      answers = ranked
    },
    showCourse: (found) => {
      const machine = practisedMachine(store.now().session)
      course.replaceChildren(...courseParts(found, machine?.faults ?? [], answers))
    },
  }
}
