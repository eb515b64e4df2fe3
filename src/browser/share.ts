/** Who can open a link: anybody, or only this device, from its files or while it serves the site. */
type LinkReach = 'anybody' | 'files' | 'this device'

const isOwnHost = (host: string): boolean =>
  /^(?:localhost|.+\.localhost|127(?:\.\d{1,3}){3}|\[::1\])$/.test(host)

/** Who can open a link, given as a whole address. */
export const reachOf = (link: string): LinkReach => {
  const { protocol, hostname } = new URL(link)
  if (protocol === 'file:') return 'files'
  return isOwnHost(hostname) ? 'this device' : 'anybody'
}

const reachWords: Readonly<Record<LinkReach, string | null>> = {
  anybody: null,
  files: 'It works on this device only, from where the site’s files lie.',
  'this device': 'It works on this device only, while the site is served here.',
}

/** What there is to say of a link that others cannot open; null of any other link. */
export const onlyHere = (link: string): string | null => reachWords[reachOf(link)]

/** The link with what is under one address put under another; null where it is not under that address. */
const moved = (link: string, from: string, to: string): string | null =>
  link.startsWith(from) ? to + link.slice(from.length) : null

/**
 * A link to a page of the site as others can open it. A site that was opened from files, and was built for an address,
 * gives its links that address; one that is served to a network gives them its address there, also where it is opened at
 * its device's own. A link that others cannot open stays as it is.
 */
export const shareable = (link: string): string => {
  const { packRoot, packSite, networkSite } = document.documentElement.dataset
  switch (reachOf(link)) {
    case 'anybody':
      return link
    case 'files': {
      if (packRoot === undefined || packSite === undefined) return link
      const shared = moved(link, new URL(packRoot, location.href).href, packSite)
      return shared?.replace(/^((?:[^?#]*\/)?)index\.html(?=$|[?#])/, '$1') ?? link
    }
    case 'this device':
      return networkSite === undefined
        ? link
        : (moved(link, location.origin, new URL(networkSite).origin) ?? link)
  }
}

/** Copies a text, then calls `done`; `byHand` where the browser does not let the page. */
export const copyText = (text: string, done: () => void, byHand: () => void): void => {
  // Without https there is no clipboard at all, whatever the types say.
  try {
    navigator.clipboard.writeText(text).then(done, byHand)
  } catch {
    byHand()
  }
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
  const reach = onlyHere(shared)
  const whole = (words: string): string => (reach === null ? words : `${words} ${reach}`)
  field.value = shared
  copyText(
    shared,
    () => {
      field.hidden = true
      say(whole(done))
    },
    () => {
      field.hidden = false
      field.select()
      say(whole('The browser does not let this page copy. Here is the link to copy by hand.'))
    },
  )
}
