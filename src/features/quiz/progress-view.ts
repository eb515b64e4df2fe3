import { noProgress, type Progress, timesAnswered, progressFile } from '../../lesson/progress.ts'
import { counted } from '../../words/lists.ts'
import { clearProgress, loadProgress, progressTrouble, unread } from './progress-storage.ts'

/** What there is in a chapter: the ids of its steps and of its questions' makers. */
export interface ChapterCounts {
  readonly chapter: number
  readonly steps: number
  readonly makers: readonly string[]
}

/** The name of the file that a reader saves. */
const fileName = 'every-eighth-needle-progress.json'

/** How long a browser is given to fetch the file's text, in ms. */
const whileSaving = 10_000

const lineOf = (progress: Progress, { chapter, steps, makers }: ChapterCounts): string => {
  const seen = Math.min(steps, progress.steps[chapter]?.length ?? 0)
  const answered = makers.filter((maker) => timesAnswered(progress, maker) > 0).length
  return seen + answered === 0
    ? ''
    : `${seen} of ${counted(steps, 'step')}, ${answered} of ${counted(makers.length, 'question')}`
}

const save = (): void => {
  const url = URL.createObjectURL(new Blob([progressFile(loadProgress())], { type: 'application/json' }))
  const link = Object.assign(document.createElement('a'), { href: url, download: fileName })
  link.click()
  // The browser fetches the text after this turn.
  setTimeout(() => {
    URL.revokeObjectURL(url)
  }, whileSaving)
}

/** Shows the reader's progress beside each chapter of the contents, and lets her save and clear it. */
export const showProgress = (root: HTMLElement, chapters: readonly ChapterCounts[]): void => {
  const find = (name: string): HTMLElement => {
    const found = root.querySelector<HTMLElement>(`.progress-${name}`)
    if (!found) throw new Error(`the page lacks .progress-${name}`)
    return found
  }
  const [said, saved, clear, sure, yes, no] = ['said', 'save', 'clear', 'sure', 'yes', 'no'].map(find)
  const lines = chapters.map((counts) => {
    const line = document.createElement('p')
    line.className = 'progress-line'
    document.querySelector(`.contents [data-chapter="${counts.chapter}"]`)?.append(line)
    return { counts, line }
  })
  const draw = (progress: Progress): void => {
    for (const { counts, line } of lines) line.textContent = lineOf(progress, counts)
    // Where something stands that can't be read, there is something to clear.
    const isNone = lines.every(({ line }) => line.textContent === '') && said!.textContent !== unread
    root.toggleAttribute('data-none', isNone)
  }
  const ask = (isAsking: boolean): void => {
    sure!.hidden = !isAsking
    clear!.hidden = isAsking
    ;(isAsking ? no! : clear!).focus()
  }
  saved!.addEventListener('click', save)
  clear!.addEventListener('click', () => {
    ask(true)
  })
  no!.addEventListener('click', () => {
    ask(false)
  })
  yes!.addEventListener('click', () => {
    clearProgress()
    said!.textContent = progressTrouble() || 'Your progress is cleared.'
    draw(noProgress)
    ask(false)
    said!.focus()
  })
  // Another tab may be reading a chapter.
  addEventListener('storage', () => {
    draw(loadProgress())
  })
  said!.textContent = progressTrouble()
  draw(loadProgress())
  root.setAttribute('data-live', '')
}
