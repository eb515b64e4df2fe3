/** Said of a link that cannot leave the device. */
const onlyHere = 'It works on this device only, from where the site’s files lie.'

/** Whether a link leads to a file, which nobody else has at that place. */
export const isOnlyHere = (link: string): boolean => link.startsWith('file:')

/**
 * A link to a page of the site as others can open it. A site that was opened from files, and was built for an address,
 * gives its links that address; a link that stays a file's is only for here.
 */
export const shareable = (link: string): string => {
  const { packRoot, packSite } = document.documentElement.dataset
  if (!isOnlyHere(link) || packRoot === undefined || packSite === undefined) return link
  const folder = new URL(packRoot, location.href).href
  return link.startsWith(folder)
    ? packSite + link.slice(folder.length).replace(/^((?:[^?#]*\/)?)index\.html(?=$|[?#])/, '$1')
    : link
}

/**
 * Copies a link and says so with `done`; where the browser does not let the page, the link is shown in its field to be
 * copied by hand.
 */
export const copyLink = (
  field: HTMLInputElement,
  link: string,
  done: string,
  say: (words: string) => void,
): void => {
  const shared = shareable(link)
  const whole = (words: string): string => (isOnlyHere(shared) ? `${words} ${onlyHere}` : words)
  field.value = shared
  const byHand = (): void => {
    field.hidden = false
    field.select()
    say(whole('The browser does not let this page copy. Here is the link to copy by hand.'))
  }
  // Without https there is no clipboard at all, whatever the types say.
  try {
    navigator.clipboard.writeText(shared).then(() => {
      field.hidden = true
      say(whole(done))
    }, byHand)
  } catch {
    byHand()
  }
}
