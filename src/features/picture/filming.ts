import { element } from '../../browser/dom.ts'
import { fileName } from '../../browser/save-file.ts'
import { button } from './fields.ts'
import type { Film } from './film/index.ts'

/** What draws a film and saves it: how far it has come, what gives it up, and what begins. */
interface Filming {
  readonly progress: HTMLProgressElement
  readonly cancel: HTMLButtonElement
  readonly giveUp: () => void
  /** Draws a film of the figure of this title and keeps it; never rejects. */
  readonly save: (film: Film, figure: string) => Promise<void>
}

/** Makes it. While a film is drawn, the button that saves can't be pressed. */
export const createFilming = (
  saveButton: HTMLButtonElement,
  say: (words: string) => void,
  keep: (file: Blob, name: string) => void,
): Filming => {
  let making: AbortController | null = null
  const giveUp = (): void => making?.abort()
  const cancel = button('Cancel', 'save-cancel', giveUp)
  const progress = element('progress', { max: '1', 'aria-label': 'How much of the film is drawn' })
  const show = (isBusy: boolean): void => {
    const hadKeyboard = [saveButton, cancel].some((each) => each === document.activeElement)
    saveButton.disabled = isBusy
    progress.hidden = cancel.hidden = !isBusy
    // The button that was pressed can't have the keyboard any longer.
    if (hadKeyboard) (isBusy ? cancel : saveButton).focus()
  }
  progress.hidden = cancel.hidden = true
  return {
    progress,
    cancel,
    giveUp,
    save: async (film, figure) => {
      const control = new AbortController()
      making = control
      progress.value = 0
      show(true)
      say('')
      try {
        const { filmOf } = await import('./film/index.ts')
        const { file, ending } = await filmOf(film, {
          signal: control.signal,
          progress: (share) => {
            progress.value = share
          },
        })
        keep(file, fileName(`${figure.replace(/^The /, '')} ${film.stretch.title}`, 'film', ending))
      } catch {
        say(
          control.signal.aborted
            ? 'The film was given up; nothing is saved.'
            : 'This browser can’t make the film. Save a picture instead.',
        )
      }
      show(false)
      making = null
    },
  }
}
