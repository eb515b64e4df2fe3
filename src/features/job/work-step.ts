import { element, setText } from '../../browser/dom.ts'
import type { Answer } from '../../find/messages.ts'
import type { PlanStep } from '../../find/plan.ts'
import type { RepairId } from '../../find/repairs.ts'
import { jobLimits } from '../../link/job.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { faultPhrase } from '../../words/faults.ts'
import { percent } from '../../words/finding.ts'
import { listed } from '../../words/lists.ts'
import { durationWords, namedPlaces, openingsWords, placesWords, repairWords } from '../../words/repairs.ts'
import { faultsToNote, isNotedAt, toggleFound } from './found-notes.ts'
import type { Section } from './section.ts'

const changeRepair = ({ job }: Section, id: RepairId, change: { isDone?: boolean; note?: string }): void => {
  job.set({ repairs: job.now().repairs.map((one) => (one.id === id ? { ...one, ...change } : one)) })
}

/** One step of the order of work; it stays while the plan changes, so that what is typed is not lost. */
export interface StepItem {
  readonly root: HTMLElement
  readonly show: (step: PlanStep, answers: readonly Answer[]) => void
}

/** Makes a step; `said` hears what was noted at it. */
export const createStep = (section: Section, repair: RepairId, said: (words: string) => void): StepItem => {
  const { root: page, job } = section
  const done = element('input', { type: 'checkbox' })
  const words = element('span')
  const opens = element('p', { class: 'small' })
  const cautions = element('div', { class: 'work-cautions-here' })
  const fold = element('button', { type: 'button' })
  let isRead = false
  const showFold = (): void => {
    cautions.toggleAttribute('data-read', isRead)
    setText(fold, isRead ? 'Show the cautions in full' : 'I have read this')
    fold.hidden = cautions.childElementCount === 0
  }
  fold.addEventListener('click', () => {
    isRead = !isRead
    showFold()
    // What was read was above it: folded away, it would take the button out of sight.
    fold.scrollIntoView({ block: 'nearest' })
  })
  const also = element('p', { class: 'small' })
  const found = element('div', { class: 'job-choices' })
  const note = element('textarea', { rows: '2', maxlength: String(jobLimits.note) })
  note.setAttribute('aria-label', `What was done: ${repairWords[repair]}`)
  note.placeholder = 'What was done, for the owner’s sheet'
  done.addEventListener('change', () => {
    changeRepair(section, repair, { isDone: done.checked })
  })
  note.addEventListener('input', () => {
    changeRepair(section, repair, { note: note.value })
  })
  const foundButton = (label: string, fault: Fault | null): HTMLElement => {
    const isNoted = isNotedAt(section, repair, fault)
    const button = element('button', { type: 'button', 'aria-pressed': String(isNoted) }, [label])
    button.addEventListener('click', () => {
      toggleFound(section, repair, fault)
      const what = fault ? faultPhrase(fault) : 'all sound there'
      said(`${isNoted ? 'Taken back' : 'Noted'}: ${what}. What it may be has changed with it.`)
    })
    return button
  }
  const root = element('li', {}, [
    element('label', { class: 'work-done' }, [done, words]),
    opens,
    cautions,
    fold,
    also,
    element('p', { class: 'small' }, ['What did you find there?']),
    found,
    note,
  ])
  return {
    root,
    show: (step, answers) => {
      const kept = job.now().repairs.find(({ id }) => id === repair)
      done.checked = kept?.isDone ?? false
      if (kept && note.value !== kept.note) note.value = kept.note
      const named = namedPlaces(step.places)
      const where = named === '' ? '' : `: ${named}`
      setText(words, `${repairWords[repair]}${where}`)
      const first = step.opens.length > 0 ? `First ${openingsWords(step.opens)}. ` : ''
      setText(opens, `${first}About ${durationWords(step.minutes)} of work.`)
      cautions.replaceChildren(
        ...step.cautions.flatMap((id) => {
          const caution = page.querySelector(`.work-cautions [data-caution="${CSS.escape(id)}"]`)
          return caution ? [caution.cloneNode(true)] : []
        }),
      )
      showFold()
      setText(
        also,
        step.also.length === 0
          ? ''
          : `While this is open, look also at ${listed(step.also.map(({ place, chance }) => `${placesWords([place])} (${percent(chance)})`))}.`,
      )
      const focused = [...found.children].findIndex((one) => one === document.activeElement)
      found.replaceChildren(
        ...faultsToNote(section, repair, answers, step.places).map((fault) =>
          foundButton(faultPhrase(fault), fault),
        ),
        foundButton('All sound there', null),
      )
      const again = found.children[focused]
      if (again instanceof HTMLElement) again.focus()
    },
  }
}
