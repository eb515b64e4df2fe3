/** Said of a link that cannot leave the device. */
export const onlyHere = 'It works on this device only, from where the site’s files lie.'

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
