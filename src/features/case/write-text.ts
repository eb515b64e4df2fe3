import type { Case, CaseReading } from '../../link/case.ts'
import type { Scenario } from '../../mechanism/scenario.ts'
import {
  inShort,
  keeping,
  mendedWords,
  provedWords,
  watching,
  wearWords,
  wrongLead,
  wrongParts,
} from '../../words/case.ts'
import { element, required, setText } from '../../browser/dom.ts'

/** The most faults that also have a short summary. */
const mostInShort = 2

const cutWords =
  'This link was cut on its way, so the end of it is missing. Here is what is left; ask for the link again.'

/** Writes words into a place of the page, which takes no room without any. */
export const setTextAt = (root: HTMLElement, selector: string, words: string): void => {
  const found = required(root, selector, HTMLElement)
  setText(found, words)
  found.hidden = words === ''
}

/** Says what of the link could not be read. While a case is made the address is a state's own link, which has no end to lose. */
export const showNotice = (root: HTMLElement, { troubles, isCut }: CaseReading, isMaking: boolean): void => {
  const words = [...(isCut && !isMaking ? [cutWords] : []), ...troubles.map(({ sentence }) => sentence)]
  setTextAt(root, '.case-notice', words.join(' '))
}

/** Names the parts of the page by whether the work is done, and writes what came of it. */
const showAfter = (root: HTMLElement, { done, after, left }: Case, scenario: Scenario): void => {
  const isAfter = after !== null
  root.toggleAttribute('data-after', isAfter)
  setText(required(root, '#case-wrong', HTMLElement), isAfter ? 'Before: as it came in' : 'What is wrong')
  for (const part of root.querySelectorAll<HTMLElement>('.case-after')) part.hidden = !isAfter
  setTextAt(root, '.case-done', isAfter ? done : '')
  setTextAt(root, '.case-mended', isAfter ? mendedWords(scenario, left) : '')
  setTextAt(root, '.case-proof', isAfter && after !== 'mended' ? provedWords(after.faults, after.shown) : '')
  setTextAt(root, '.case-watch', isAfter ? watching(scenario) : '')
  setTextAt(root, '.case-keep', isAfter ? keeping(scenario) : '')
}

/** Writes a case's title and note, and what is wrong, part by part. */
export const showWrong = (root: HTMLElement, shown: Case, scenario: Scenario): void => {
  const { title, state } = shown
  showAfter(root, shown, scenario)
  setTextAt(root, '.case-title', title === '' ? 'About your knitting machine' : title)
  setTextAt(root, '.case-note', state.note)
  required(root, '.case-message', HTMLElement).hidden = state.note.trim() === ''
  // With many faults the list below says as much in less room.
  const short = scenario.faults.length <= mostInShort ? inShort(scenario) : ''
  setTextAt(root, '.case-lead', [wrongLead(scenario), short].join(' ').trim())
  required(root, '.case-parts', HTMLElement).replaceChildren(
    ...wrongParts(scenario.faults).map(({ name, words }) =>
      element('li', {}, [element('strong', {}, [`${name}. `]), words]),
    ),
  )
  setTextAt(root, '.case-wear', wearWords(scenario))
}

/** The form's fields. */
export const fieldsOf = (
  root: HTMLElement,
): { title: HTMLInputElement; note: HTMLTextAreaElement; done: HTMLTextAreaElement } => ({
  title: required(root, '#case-title', HTMLInputElement),
  note: required(root, '#case-note', HTMLTextAreaElement),
  done: required(root, '#case-done', HTMLTextAreaElement),
})

/** Writes a case's texts into the form; what was done has a field once the work is. */
export const writeForm = (root: HTMLElement, shown: Case): void => {
  const { title, note, done } = fieldsOf(root)
  required(root, '.case-form-done', HTMLElement).hidden = shown.after === null
  done.value = shown.done
  title.value = shown.title
  note.value = shown.state.note
}
