/** The end of the path of a class's window: the chapter, and whether it is the speaker's. */
const ending = /\/class\/[^/]+\/(?:speaker\/)?([^/]*)$/

/** The address of a page of a class, from any other page of it. What follows the folders is kept: files have a name. */
const pageOf = (id: string, folders: string): URL => {
  const url = new URL(location.href)
  url.pathname = url.pathname.replace(ending, `/class/${folders}/$1`)
  url.search = new URLSearchParams({ class: id }).toString()
  url.hash = ''
  return url
}

/**
 * Opens the speaker's window of a class, or brings it to the front where it is open already. Returns false where the
 * browser did not let it open.
 */
export const openSpeaker = (id: string, chapter: string): boolean =>
  open(pageOf(id, `${chapter}/speaker`), `speaker-${id}`, 'popup,width=1180,height=800') !== null

/** Moves this window, the speaker's or the class's, to another chapter of the class. */
export const goToChapter = (id: string, chapter: string): void => {
  const isSpeakers = /\/speaker\/[^/]*$/.test(location.pathname)
  location.assign(pageOf(id, isSpeakers ? `${chapter}/speaker` : chapter))
}
