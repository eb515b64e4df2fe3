import { element, required, setText } from '../../browser/dom.ts'
import { jobLimits } from '../../link/job.ts'
import { quote } from '../../link/troubles.ts'
import { ask } from './ask.ts'
import { readPhoto } from './photo.ts'
import { randomId } from './random-id.ts'
import type { Section } from './section.ts'
import type { Photo } from './shelf.ts'

const bindInput = (input: HTMLInputElement, { root, job }: Section): void => {
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

/** The photographs of the job on the page, each with its words and a button that takes it out. Gives what shows them again. */
export const createPhotos = (section: Section): (() => Promise<void>) => {
  const { root, job, shelf } = section
  const input = required(root, '.intake-photo', HTMLInputElement)
  bindInput(input, section)
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
      const named = field.value.trim() === '' ? 'this photograph' : `the photograph “${field.value.trim()}”`
      const words = `Take ${named} out of the job? It can’t be brought back, unless you have saved the job as a file.`
      void ask(root, words, { remove: 'Take it out', keep: 'Keep it' }).then((answer) => {
        if (answer !== 'remove') return
        job.set({ photos: job.now().photos.filter((one) => one.id !== id) })
        input.focus()
      })
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
