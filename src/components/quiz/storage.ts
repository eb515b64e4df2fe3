import { type Progress, readProgress, storageKey, writeProgress } from '../../lesson/progress.ts'

/** What to say where a browser keeps nothing. */
export const notKept =
  'This browser does not let the site keep your progress, so it is forgotten when you leave; all else works.'

const minutesADay = 24 * 60

/** Today by the reader's own clock, counted from 1 January 1970. */
export const today = (): number => {
  const now = new Date()
  return Math.floor((now.getTime() / 60_000 - now.getTimezoneOffset()) / minutesADay)
}

/** Progress where the browser keeps none: it lasts as long as the page. */
let unkept: string | null = null

/** The progress so far; none where the browser denies its storage. */
export const loadProgress = (): Progress => {
  try {
    return readProgress(localStorage.getItem(storageKey) ?? unkept)
  } catch {
    return readProgress(unkept)
  }
}

/** Changes the progress as it stands now, whoever changed it last. False where it could not be kept. */
export const changeProgress = (change: (progress: Progress) => Progress): boolean => {
  const before = loadProgress()
  const after = change(before)
  if (after === before) return true
  const text = writeProgress(after)
  try {
    localStorage.setItem(storageKey, text)
    return true
  } catch {
    unkept = text
    return false
  }
}

/** Forgets all progress in this browser. */
export const clearProgress = (): void => {
  unkept = null
  try {
    localStorage.removeItem(storageKey)
  } catch {
    // There is none to forget.
  }
}
