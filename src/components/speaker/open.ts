/** Where the speaker's window of a class stands, as seen from the class view of any chapter. */
const speakerPage = (id: string, chapter: string): URL => {
  // Without a server, a folder does not stand for the page in it.
  const page = location.protocol === 'file:' ? 'index.html' : ''
  const url = new URL(`../${chapter}/speaker/${page}`, location.href)
  url.search = new URLSearchParams({ class: id }).toString()
  return url
}

/**
 * Opens the speaker's window of a class, or brings it to the front where it is open already. Gives false where the
 * browser did not let it open.
 */
export const openSpeaker = (id: string, chapter: string): boolean =>
  open(speakerPage(id, chapter), `speaker-${id}`, 'popup,width=1180,height=800') !== null
