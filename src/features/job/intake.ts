import { element, required, setText } from '../../browser/dom.ts'
import { jobLimits } from '../../link/job.ts'
import { readSession, writeSession } from '../../link/session-link.ts'
import { quote } from '../../link/troubles.ts'
import { canonicalPlace, needleIndex, needleName } from '../../mechanism/bed.ts'
import type { Section } from './section.ts'
import { readPhoto } from './photo.ts'
import { randomId } from './random-id.ts'
import type { Photo } from './shelf.ts'
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

const bindPhotos = ({ root, job }: Section): void => {
  const input = required(root, '.intake-photo', HTMLInputElement)
  const said = required(root, '.intake-photo-said', HTMLElement)
  const add = async (files: readonly File[]): Promise<void> => {
    const refused: string[] = []
    for (const file of files) {
      if (job.now().photos.length >= jobLimits.photos) {
        refused.push(`a job has at most ${jobLimits.photos} photographs`)
        break
      }
      const reading = await readPhoto(file)
      if (reading.jpeg === null) {
        refused.push(`${quote(file.name)} was not added, because ${reading.reason}`)
        continue
      }
      const id = randomId()
      const photo: Photo = { id, job: job.now().id, jpeg: reading.jpeg }
      job.set({ photos: [...job.now().photos, { id, words: '' }] }, [photo])
    }
    setText(said, refused.length === 0 ? '' : `${refused.join('; ')}.`)
  }
  input.addEventListener('change', () => {
    const files = [...(input.files ?? [])]
    input.value = ''
    void add(files)
  })
}

/** The photographs of the job on the page, each with its words and a button that takes it out. */
const createPhotos = ({ root, job, shelf }: Section): (() => Promise<void>) => {
  const list = required(root, '.intake-photos', HTMLElement)
  const shown = new Map<number, { item: HTMLElement; address: string }>()
  const itemOf = ({ id, jpeg }: Photo, words: string): { item: HTMLElement; address: string } => {
    const address = URL.createObjectURL(jpeg)
    const field = element('input', { type: 'text', maxlength: String(jobLimits.note) })
    field.value = words
    field.setAttribute('aria-label', 'What this photograph shows')
    field.placeholder = 'What it shows'
    field.addEventListener('input', () => {
      const photos = job.now().photos.map((one) => (one.id === id ? { id, words: field.value } : one))
      job.set({ photos })
    })
    const remove = element('button', { type: 'button' }, ['Take out'])
    remove.addEventListener('click', () => {
      job.set({ photos: job.now().photos.filter((one) => one.id !== id) })
    })
    const picture = element('img', {
      src: address,
      alt: words === '' ? 'A photograph of the machine' : words,
    })
    return { item: element('li', {}, [picture, field, remove]), address }
  }
  return async () => {
    const { id: open, photos: wanted } = job.now()
    for (const [id, { item, address }] of shown)
      if (!wanted.some((one) => one.id === id)) {
        item.remove()
        URL.revokeObjectURL(address)
        shown.delete(id)
      }
    if (wanted.every(({ id }) => shown.has(id))) return
    const pictures = await shelf.photos(open)
    if (job.id() !== open) return
    for (const photo of pictures) {
      const words = job.now().photos.find(({ id }) => id === photo.id)?.words
      if (words === undefined || shown.has(photo.id)) continue
      const made = itemOf(photo, words)
      shown.set(photo.id, made)
      list.append(made.item)
    }
  }
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
  bindPhotos(section)
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
