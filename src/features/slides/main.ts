import { dataOf, required, setText } from '../../browser/dom.ts'
import { fetchedPage } from '../../browser/fetched-page.ts'
import { libraryOf } from '../../browser/library.ts'
import { fileName, saveFile } from '../../browser/save-file.ts'
import { type SlideStep, stepsIn } from './steps.ts'

/** The steps with their notes, from the page that has them; without notes where that page can't be had. */
const stepsWithNotes = async (address: string | undefined): Promise<SlideStep[]> => {
  const own = stepsIn(document)
  if (address === undefined) return own
  try {
    const steps = stepsIn(await fetchedPage(address))
    return steps.length === own.length ? steps : own
  } catch {
    return own
  }
}

/** Saves a chapter as slides, at once and whenever its button is pressed again. */
export const startSlides = (root: HTMLElement): void => {
  const save = required(root, '.slides-save', HTMLButtonElement)
  const cancel = required(root, '.slides-cancel', HTMLButtonElement)
  const bar = required(root, 'progress', HTMLProgressElement)
  // A screen reader has the bar: each count said aloud would be one too many.
  const count = required(root, '.slides-count', HTMLElement)
  const said = required(root, '.slides-said', HTMLElement)
  const title = dataOf(root, 'title')
  let stop: AbortController | null = null
  const busy = (isBusy: boolean): void => {
    const hadKeyboard = [save, cancel].some((each) => each === document.activeElement)
    save.disabled = isBusy
    cancel.hidden = bar.hidden = !isBusy
    // The button that was pressed can't have the keyboard any longer.
    if (hadKeyboard) (isBusy ? cancel : save).focus()
  }
  const make = async (signal: AbortSignal): Promise<string> => {
    const library = libraryOf(required(document, '.library', HTMLScriptElement).text)
    const [{ zipOfSlides }, steps] = await Promise.all([
      import('./save.ts'),
      stepsWithNotes(root.dataset.notes),
    ])
    bar.max = steps.length
    bar.value = 0
    const zip = await zipOfSlides({ title, steps, library }, signal, (drawn) => {
      bar.value = drawn
      setText(count, `${drawn} of ${steps.length}`)
    })
    const name = fileName(title, 'slides', 'zip')
    saveFile(name, zip)
    const hasNotes = steps.some(({ notes }) => notes.length > 0)
    return `Saved as ${name}: ${steps.length} pictures and a text${hasNotes ? ' with the notes' : '. The notes for teachers could not be fetched'}.`
  }
  const start = (): void => {
    stop = new AbortController()
    const { signal } = stop
    busy(true)
    setText(said, 'Drawing them.')
    make(signal)
      .catch(() =>
        signal.aborted ? 'Cancelled: nothing is saved.' : 'This browser could not make the pictures.',
      )
      .then((words) => {
        busy(false)
        setText(count, '')
        setText(said, words)
      })
      .catch(() => undefined)
  }
  save.addEventListener('click', start)
  cancel.addEventListener('click', () => stop?.abort())
  start()
}
