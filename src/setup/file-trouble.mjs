import { accessSync, constants, mkdirSync, statfsSync } from 'node:fs'
import { Stop } from './say.mjs'

/** Why the system does not write a file or a folder, by the error's code. @type {Readonly<Record<string, string>>} */
const reasons = {
  EACCES: 'its permissions do not allow it',
  EDQUOT: 'the disk is full',
  EEXIST: 'something else has its name',
  EISDIR: 'it is a folder',
  ENOSPC: 'the disk is full',
  ENOTDIR: 'something else has its name',
  EPERM: 'its permissions do not allow it',
  EROFS: 'the disk can only be read',
}

/**
 * A sentence for an error of writing that a person can do something about; null for any other error.
 * @param {unknown} error
 * @param {string} [what] was written, where the error does not name it
 * @returns {string | null}
 */
export function fileTrouble(error, what = 'A file') {
  const { code = '', path } = /** @type {NodeJS.ErrnoException} */ (error ?? {})
  const reason = Object.hasOwn(reasons, code) ? reasons[code] : undefined
  return reason === undefined
    ? null
    : `${path === undefined ? what : `“${path}”`} could not be written: ${reason}.`
}

/** What a build writes at most, in bytes: about 11 MB of site, beside the same again while it is made. */
const roomForBuild = 40 * 1024 * 1024

/**
 * Makes a folder to build into. Throws a Stop with the reason where it cannot be written, or the disk has no room for a build.
 * @param {string} folder
 * @param {number} [bytes] that are needed
 */
export function ensureRoom(folder, bytes = roomForBuild) {
  try {
    mkdirSync(folder, { recursive: true })
    accessSync(folder, constants.W_OK)
  } catch (error) {
    const trouble = fileTrouble(error)
    if (trouble === null) throw error
    throw new Stop(trouble)
  }
  const { bavail, bsize } = statfsSync(folder)
  if (bavail * bsize >= bytes) return
  const megabytes = (/** @type {number} */ some) => `${Math.ceil(some / 1024 / 1024)} MB`
  throw new Stop(
    `The disk is too full to build the site: “${folder}” has ${megabytes(bavail * bsize)} left, and it takes ${megabytes(bytes)}.`,
  )
}
