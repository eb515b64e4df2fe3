import { change, forget, load, type Section, storageTrouble } from '../../browser/storage.ts'
import { noProgress, parseProgress, type Progress } from '../../lesson/progress.ts'

const progressSection: Section<Progress> = {
  read: parseProgress,
  write: ({ steps, answers }) => ({ steps, answers }),
}

/** What to say where a browser keeps nothing. */
export const notKept =
  'This browser does not let the site keep your progress, so it is forgotten when you leave; all else works.'

/** What to say where a browser kept something that is no progress. */
export const unread =
  'What this browser had kept of your progress can’t be read, so it starts again from nothing. “Clear” removes what was there.'

const minutesADay = 24 * 60

/** Today by the reader's own clock, in days since 1 January 1970. */
export const today = (): number => {
  const now = new Date()
  return Math.floor((now.getTime() / 60_000 - now.getTimezoneOffset()) / minutesADay)
}

/** The progress so far; none where the browser denies its storage. */
export const loadProgress = (): Progress => load(progressSection)

/** Changes the progress as it is now, whichever window changed it last. Returns false where it could not be kept. */
export const changeProgress = (by: (progress: Progress) => Progress): boolean => change(progressSection, by)

/** What is wrong with what this browser keeps, in a sentence; empty where nothing is. */
export const progressTrouble = (): string => {
  switch (storageTrouble()) {
    case 'not-kept':
      return notKept
    case 'unread':
      return unread
    case undefined:
      return ''
  }
}

/** Forgets all progress in this browser. */
export const clearProgress = (): void => {
  forget(progressSection, noProgress)
}
