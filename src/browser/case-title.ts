/**
 * A case's title on its way between the case's page and the workbench. It is a customer's name as often as not, so it
 * is in no address but the case's own: this window's session carries it to the page that a link leads to, which takes
 * it out again.
 */
const key = 'every-eighth-needle-case-title'

/** Sends a title along with a link to a page whose address has this fragment; an empty one takes back what was sent. */
export const sendTitle = (fragment: string, title: string): void => {
  try {
    if (title === '') sessionStorage.removeItem(key)
    else sessionStorage.setItem(key, JSON.stringify([fragment, title]))
  } catch {
    // A browser that keeps nothing loses the title on the way.
  }
}

/** Takes the title that was sent to this page; empty where none was sent to its fragment. */
export const receiveTitle = (): string => {
  try {
    const sent: unknown = JSON.parse(sessionStorage.getItem(key) ?? 'null')
    sessionStorage.removeItem(key)
    if (!Array.isArray(sent)) return ''
    const [fragment, title] = sent as unknown[]
    return fragment === location.hash && typeof title === 'string' ? title : ''
  } catch {
    return ''
  }
}
