import { required, setText } from '../../browser/dom.ts'
import type { MachineStore, Moment } from '../../browser/machine-store.ts'
import { parsePart } from '../../mechanism/part.ts'
import { describeWith } from '../../words/subject.ts'

/** How long after the last change a screen reader hears the sentence, in ms. */
const quiet = 700

/** Says something once, in the line below the figure. */
export const say = (root: HTMLElement, words: string): void => {
  required(root, '.notice', HTMLElement).textContent = words
}

/** Says one thing more, after what is said there already. */
export const sayToo = (root: HTMLElement, words: string): void => {
  const said = required(root, '.notice', HTMLElement).textContent
  say(root, [said, words].filter((part) => part !== '').join(' '))
}

/** The words that came with a link, for whoever opened it. */
export const bindNote = (root: HTMLElement, store: MachineStore): void => {
  const note = required(root, '.link-note', HTMLElement)
  store.subscribe(({ state }, before) => {
    if (before && before.state.note === state.note) return
    note.hidden = state.note === ''
    note.textContent = state.note === '' ? '' : `Note with this link: ${state.note}`
  })
}

/** How long words for a screen reader stay in the page, where they could be read a second time, in ms. */
const heard = 5000

/** Has a screen reader say words once: soon after, they are gone, so that none reads them again beside the caption. */
export const createSpeech = (root: ParentNode): ((words: string) => void) => {
  const spoken = required(root, '.spoken', HTMLElement)
  let timer: ReturnType<typeof setTimeout> | undefined
  return (words) => {
    spoken.textContent = words
    clearTimeout(timer)
    timer = setTimeout(() => {
      spoken.textContent = ''
    }, heard)
  }
}

/** How long a sentence stays while the machine plays, in ms: long enough to be read. */
const steady = 3000

/**
 * The sentence under the figure, and the same for a screen reader once the carriage has come to rest. Returns what writes
 * it at once, for when the playing stops.
 */
export const bindWords = (root: HTMLElement, store: MachineStore): (() => void) => {
  const caption = required(root, '.happening', HTMLElement)
  const speak = createSpeech(root)
  const figure = required(root, '.figure', HTMLElement)
  let timer: ReturnType<typeof setTimeout> | undefined
  const sentences = ({ run, frame }: Moment): string =>
    describeWith(run, frame, parsePart(figure.dataset.subject ?? ''))
  let written = -Infinity
  const write = (): void => {
    written = performance.now()
    setText(caption, sentences(store.now()))
  }
  store.subscribe((_, before) => {
    if (!root.hasAttribute('data-playing') || performance.now() - written >= steady) write()
    if (!before) return
    clearTimeout(timer)
    timer = setTimeout(() => {
      speak(sentences(store.now()))
    }, quiet)
  })
  return write
}
