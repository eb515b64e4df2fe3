import { type Film, stillOf } from './film.ts'
import { gifOf } from './gif.ts'
import { videoKind, videoOf } from './video.ts'
import type { Watch } from './watch.ts'

export { stillOf, type Film }

/** Widths of a video in pixels, for the two shapes of figures. */
const widths = { wide: 1280, narrow: 720 } as const

/** A film as a file, and the ending of its name. */
export interface FilmFile {
  readonly file: Blob
  readonly ending: 'mp4' | 'webm' | 'gif'
}

/** Whether this browser encodes video; else its films are GIFs. */
export const hasVideo = async (): Promise<boolean> => (await videoKind()) !== null

/**
 * A film as the file of a video, or as a GIF where this browser encodes none or fails at it. Throws an AbortError where
 * it is given up.
 */
export const filmOf = async (film: Film, watch: Watch): Promise<FilmFile> => {
  const kind = await videoKind()
  if (kind)
    try {
      return { file: await videoOf(film, kind, widths[film.shown.shape], watch), ending: kind.ending }
    } catch (error) {
      watch.signal.throwIfAborted()
      console.info('The video could not be encoded, so the film is made a GIF.', error)
    }
  return { file: await gifOf(film, watch), ending: 'gif' }
}
