import { newSession, sessionOf } from './state.ts'

/** The class's id, kept in the address so that a reload and another window find it. */
export const session = (): string => {
  const id = sessionOf(location.search)
  if (id !== undefined) return id
  const made = newSession()
  const url = new URL(location.href)
  url.searchParams.set('class', made)
  history.replaceState(history.state, '', url)
  return made
}

/** Seeds of class quizzes run from 1 to this. */
const seeds = 999

/** Draws the seed of a class quiz. */
export const newSeed = (): number => 1 + Math.floor(Math.random() * seeds)
