/** The longer side of a picture as it is kept, in pixels. */
const longest = 1600
const quality = 0.85

/** The largest picture file that is read, in bytes: more than a camera makes. */
const mostBytes = 40_000_000

/** What came of a picture: a JPEG of at most 1600 pixels; or why there is none. */
export type PhotoReading = { readonly jpeg: Blob } | { readonly jpeg: null; readonly reason: string }

const scaled = async (picture: ImageBitmap): Promise<Blob | null> => {
  const scale = Math.min(1, longest / Math.max(picture.width, picture.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(picture.width * scale))
  canvas.height = Math.max(1, Math.round(picture.height * scale))
  const brush = canvas.getContext('2d')
  if (!brush) return null
  brush.drawImage(picture, 0, 0, canvas.width, canvas.height)
  return new Promise((done) => {
    canvas.toBlob(done, 'image/jpeg', quality)
  })
}

/**
 * A picture as a job keeps it: drawn again, so that nothing of the file but the picture is left, no place and no time
 * where it was taken.
 */
export const readPhoto = async (file: File): Promise<PhotoReading> => {
  if (!file.type.startsWith('image/') || file.type === 'image/svg+xml')
    return { jpeg: null, reason: 'it is no photograph' }
  if (file.size > mostBytes) return { jpeg: null, reason: 'it is too large' }
  try {
    const picture = await createImageBitmap(file)
    const jpeg = await scaled(picture)
    picture.close()
    return jpeg ? { jpeg } : { jpeg: null, reason: 'this browser can’t make it smaller' }
  } catch {
    return { jpeg: null, reason: 'this browser can’t read it as a picture' }
  }
}
