import { isProgress, type Progress, readProgress, storageKey, writeProgress } from '../../lesson/progress.ts'

/** What to say where a browser keeps nothing. */
export const notKept =
  'This browser does not let the site keep your progress, so it is forgotten when you leave; all else works.'

/** What to say where a browser kept something that is no progress. */
export const unread =
  'What this browser had kept of your progress can’t be read, so it starts anew. “Clear” removes what stood there.'

/** Where a text that can't be read is set aside, so that nothing is lost by what is kept anew. */
const asideKey = `${storageKey}-unread`

/** Written to see whether there is room, and taken away again. */
const tryKey = `${storageKey}-try`
const roomWanted = 1000

const minutesADay = 24 * 60

/** Today by the reader's own clock, counted from 1 January 1970. */
export const today = (): number => {
  const now = new Date()
  return Math.floor((now.getTime() / 60_000 - now.getTimezoneOffset()) / minutesADay)
}

/** Progress that the browser did not keep: it lasts as long as the page, and is later than what is kept. */
let unkept: string | null = null

/** The progress so far; none where the browser denies its storage. */
export const loadProgress = (): Progress => {
  try {
    return readProgress(unkept ?? localStorage.getItem(storageKey))
  } catch {
    return readProgress(unkept)
  }
}

/** Sets aside a text that the progress can't be read from. Throws where the browser does not keep it. */
const setAside = (): void => {
  const text = localStorage.getItem(storageKey)
  if (text !== null && !isProgress(text)) localStorage.setItem(asideKey, text)
}

/** Changes the progress as it stands now, whoever changed it last. False where it could not be kept. */
export const changeProgress = (change: (progress: Progress) => Progress): boolean => {
  const before = loadProgress()
  const after = change(before)
  if (after === before && unkept === null) return true
  const text = writeProgress(after)
  try {
    setAside()
    localStorage.setItem(storageKey, text)
    unkept = null
    return true
  } catch {
    unkept = text
    return false
  }
}

/** What is the matter with what this browser keeps, in a sentence; empty where nothing is. */
export const storageTrouble = (): string => {
  try {
    localStorage.setItem(tryKey, 'x'.repeat(roomWanted))
    localStorage.removeItem(tryKey)
    setAside()
    return localStorage.getItem(asideKey) === null ? '' : unread
  } catch {
    return notKept
  }
}

/** Forgets all progress in this browser. */
export const clearProgress = (): void => {
  unkept = null
  try {
    for (const key of [storageKey, asideKey]) localStorage.removeItem(key)
  } catch {
    // There is none to forget.
  }
}
