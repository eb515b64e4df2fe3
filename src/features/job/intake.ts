import { required, setText } from '../../browser/dom.ts'
import { jobLimits } from '../../link/job.ts'
import { readSession, writeSession } from '../../link/session-link.ts'
import { quote } from '../../link/troubles.ts'
import { canonicalPlace, needleIndex, needleName } from '../../mechanism/bed.ts'
import { createPhotos } from './photos.ts'
import type { Section } from './section.ts'
import { ownersQuestions } from './words.ts'

const bindText = (
  field: HTMLInputElement | HTMLTextAreaElement,
  name: 'name' | 'complaint',
  { job }: Section,
): void => {
  field.addEventListener('input', () => {
    job.set({ [name]: Array.from(field.value).slice(0, jobLimits[name]).join('') })
  })
}

/** The questions on the page, each with its field. */
const questionFields = (root: HTMLElement) =>
  ownersQuestions.map((question) => ({
    ...question,
    field: required(root, `.intake-question[data-question='${question.id}']`, HTMLElement),
  }))

const bindQuestions = ({ root, job }: Section): void => {
  for (const { id, answers, field } of questionFields(root)) {
    field.addEventListener('change', ({ target }) => {
      if (!(target instanceof HTMLInputElement)) return
      const answer = answers.find(({ written }) => written === target.value)?.written ?? null
      job.set({ intake: { ...job.now().intake, [id]: answer } })
    })
  }
}

const showQuestions = ({ root, job }: Section): void => {
  for (const { id, answers, field } of questionFields(root)) {
    const answer = job.now().intake[id]
    for (const radio of field.querySelectorAll('input')) radio.checked = radio.value === (answer ?? '')
    const changes = answers.find(({ written }) => written === answer)?.changes ?? ''
    setText(required(field, '.intake-effect', HTMLElement), changes)
  }
}

/** Column 1's needle is of what was seen, before the work and after. */
const bindColumnOne = (section: Section): void => {
  const { root, job, library } = section
  const field = required(root, '.intake-first', HTMLInputElement)
  const said = required(root, '#intake-first-said', HTMLElement)
  field.addEventListener('change', () => {
    const needle = needleIndex(field.value.trim().toUpperCase())
    if (needle === null) {
      setText(said, `${quote(field.value)} is no needle such as R1 or L12, so column 1 stays where it was.`)
      return
    }
    const { columnOne } = canonicalPlace({ columnOne: needle })
    const moved = (text: string): string =>
      writeSession({ ...readSession(text, library).session, columnOne }, library)
    job.set({ before: moved(job.now().before), after: moved(job.now().after) })
    setText(said, `Column 1 is at ${needleName(columnOne)}, and at every 24th needle from it.`)
  })
}

const showColumnOne = ({ root, job, library }: Section): void => {
  const field = required(root, '.intake-first', HTMLInputElement)
  if (field === document.activeElement) return
  field.value = needleName(readSession(job.now().before, library).session.columnOne)
}

/** The moment in which a machine comes in: what its owner says. Gives what shows it again. */
export const createIntake = (section: Section): (() => void) => {
  const { root, job } = section
  const name = required(root, '.intake-name', HTMLInputElement)
  const complaint = required(root, '.intake-complaint', HTMLTextAreaElement)
  bindText(name, 'name', section)
  bindText(complaint, 'complaint', section)
  bindQuestions(section)
  bindColumnOne(section)
  const showPhotos = createPhotos(section)
  return () => {
    const now = job.now()
    if (name.value !== now.name) name.value = now.name
    if (complaint.value !== now.complaint) complaint.value = now.complaint
    showQuestions(section)
    showColumnOne(section)
    void showPhotos()
  }
}
