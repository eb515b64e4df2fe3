const idForm = /^[a-z0-9]{4,16}$/

/** The class's id in a page's query, `?class=ID`; undefined where there is none, or none that could be one. */
export const sessionIn = (search: string): string | undefined => {
  const id = new URLSearchParams(search).get('class')
  return id !== null && idForm.test(id) ? id : undefined
}

/** A new class's id: six random letters and digits. */
export const newSession = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(6)), (byte) => (byte % 36).toString(36)).join('')

/** The class's id, kept in the address so that a reload and another window find it. */
export const session = (): string => {
  const id = sessionIn(location.search)
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

/** The name of the channel that a class's windows share. */
export const channelName = (id: string): string => `class-${id}`

/** Opens that channel; undefined where the browser has none, or denies it, as some do with their storage. */
export const openChannel = (id: string): BroadcastChannel | undefined => {
  try {
    return new BroadcastChannel(channelName(id))
  } catch {
    return undefined
  }
}
