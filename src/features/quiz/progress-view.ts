import { required } from '../../browser/dom.ts'
import { saveFile } from '../../browser/save-file.ts'
import { noProgress, type Progress, timesAnswered, progressFile } from '../../lesson/progress.ts'
import { counted } from '../../words/lists.ts'
import { clearProgress, loadProgress, progressTrouble, unread } from './progress-storage.ts'

/** A chapter's number, how many steps it has, and the ids of its questions' makers. */
export interface ChapterCounts {
  readonly chapter: number
  readonly steps: number
  readonly makers: readonly string[]
}

/** The name of the file that a reader saves. */
const fileName = 'every-eighth-needle-progress.json'

const lineOf = (progress: Progress, { chapter, steps, makers }: ChapterCounts): string => {
  const seen = Math.min(steps, progress.steps[chapter]?.length ?? 0)
  const answered = makers.filter((maker) => timesAnswered(progress, maker) > 0).length
  return seen + answered === 0
    ? ''
    : `${seen} of ${counted(steps, 'step')}, ${answered} of ${counted(makers.length, 'question')}`
}

const save = (): void => {
  saveFile(fileName, new Blob([progressFile(loadProgress())], { type: 'application/json' }))
}

/** Shows the reader's progress beside each chapter of the contents, with buttons to save and clear it. */
export const showProgress = (root: HTMLElement, chapters: readonly ChapterCounts[]): void => {
  const find = (name: string): HTMLElement => required(root, `.progress-${name}`, HTMLElement)
  const [message, saveButton, clear] = [find('said'), find('save'), find('clear')]
  const [sure, yes, no] = [find('sure'), find('yes'), find('no')]
  const lines = chapters.map((counts) => {
    const line = document.createElement('p')
    line.className = 'progress-line'
    document.querySelector(`.contents [data-chapter="${counts.chapter}"]`)?.append(line)
    return { counts, line }
  })
  const draw = (progress: Progress): void => {
    for (const { counts, line } of lines) line.textContent = lineOf(progress, counts)
    // A text that can't be read can be cleared too.
    const isNone = lines.every(({ line }) => line.textContent === '') && message.textContent !== unread
    root.toggleAttribute('data-none', isNone)
  }
  const ask = (isAsking: boolean): void => {
    sure.hidden = !isAsking
    clear.hidden = isAsking
    const next = isAsking ? no : clear
    next.focus()
  }
  saveButton.addEventListener('click', save)
  clear.addEventListener('click', () => {
    ask(true)
  })
  no.addEventListener('click', () => {
    ask(false)
  })
  yes.addEventListener('click', () => {
    clearProgress()
    message.textContent = progressTrouble() || 'Your progress is cleared.'
    draw(noProgress)
    ask(false)
    message.focus()
  })
  // Another tab may be reading a chapter.
  addEventListener('storage', () => {
    draw(loadProgress())
  })
  message.textContent = progressTrouble()
  draw(loadProgress())
  root.setAttribute('data-live', '')
}
