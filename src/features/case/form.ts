import { type Case, titleCharacters } from '../../link/case.ts'
import { limits } from '../../link/state.ts'
import { copyLink, shareable } from '../../browser/share.ts'
import { required } from '../../browser/dom.ts'
import { codeFile } from '../../browser/qr-code.ts'
import { saveFile } from '../../browser/save-file.ts'
import { fieldsOf, writeForm } from './write-text.ts'

/** How long a text is, as links count it, and what is lost of it. */
const countWords = (text: string, most: number): string => {
  const length = Array.from(text).length
  const lost = length - most
  if (lost <= 0) return `${length} of ${most} characters`
  const which = lost === 1 ? 'the last one does' : `the last ${lost} do`
  return `${length} of ${most} characters: ${which} not go with the link`
}

const showCount = (count: HTMLElement, text: string, most: number): void => {
  count.textContent = countWords(text, most)
  count.toggleAttribute('data-over', Array.from(text).length > most)
}

/** The texts of a case, as they are typed. */
interface Typed extends Pick<Case, 'title' | 'done'> {
  readonly note: string
}

const cut = (text: string): string => Array.from(text).slice(0, limits.noteCharacters).join('')

/** A case's texts, as they are typed; calls back at every change. Gives what fills the form from a case. */
export const bindForm = (root: HTMLElement, changed: (typed: Typed) => void): ((shown: Case) => void) => {
  const { title, note, done } = fieldsOf(root)
  const showCounts = (): void => {
    showCount(required(root, '.title-count', HTMLElement), title.value, titleCharacters)
    showCount(required(root, '.note-count', HTMLElement), note.value, limits.noteCharacters)
    showCount(required(root, '.done-count', HTMLElement), done.value, limits.noteCharacters)
  }
  const report = (): void => {
    showCounts()
    changed({ title: title.value, note: cut(note.value), done: cut(done.value) })
  }
  for (const field of [title, note, done]) field.addEventListener('input', report)
  required(root, '.case-form', HTMLFormElement).addEventListener('submit', (event) => {
    event.preventDefault()
  })
  // The form is there before all this is: what was typed into it meanwhile is kept.
  let isNew = true
  return (shown) => {
    if (!isNew) writeForm(root, shown)
    showCounts()
    const isTyped =
      title.value !== shown.title || note.value !== shown.state.note || done.value !== shown.done
    if (isNew && isTyped) report()
    isNew = false
  }
}

/** What a link to a case is sent with. */
interface Sending {
  /** The whole address of the case as it is now. */
  readonly link: () => string
  readonly title: () => string
  readonly say: (words: string) => void
}

const bindCopy = (root: HTMLElement, { link, say }: Sending): void => {
  const shown = required(root, '.case-link-text', HTMLInputElement)
  required(root, '.case-copy', HTMLButtonElement).addEventListener('click', () => {
    copyLink(shown, link(), 'The link is copied. Paste it into a message to your customer.', say)
  })
}

const bindShare = (root: HTMLElement, { link, title, say }: Sending): void => {
  const share = required(root, '.case-share', HTMLButtonElement)
  share.hidden = !('share' in navigator)
  share.addEventListener('click', () => {
    navigator.share({ title: title(), url: shareable(link()) }).catch((error: unknown) => {
      const isGivenUp = error instanceof DOMException && error.name === 'AbortError'
      if (!isGivenUp) say('The browser could not share the link. Copy it instead.')
    })
  })
}

/** The name of the file that a case's QR code is saved as. */
const codeName = 'case-qr.svg'

const bindSave = (root: HTMLElement, { say }: Sending): void => {
  required(root, '.case-save', HTMLButtonElement).addEventListener('click', () => {
    const svg = required(root, '.case-code svg', SVGSVGElement)
    if (!svg.firstChild) {
      say('There is no QR code to save. The reason is beside its place.')
      return
    }
    saveFile(codeName, new Blob([codeFile(svg)], { type: 'image/svg+xml' }))
    say(`The QR code is saved as ${codeName}.`)
  })
}

/** The buttons by which a case is sent. */
export const bindSending = (root: HTMLElement, sending: Sending): void => {
  bindCopy(root, sending)
  bindShare(root, sending)
  bindSave(root, sending)
}
