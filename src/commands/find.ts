// npm run --silent find -- FILE.json: what may be wrong with a machine, from what was seen on its bed, as one JSON
// document on standard output.

import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { inferWhole } from '../find/infer.ts'
import { nextLooks } from '../find/next.ts'
import { quote } from '../link/troubles.ts'
import { cardLibrary, cardsFolder } from './cards.ts'
import { type Command, refuse, runAsProcess } from './command.ts'
import { findDocument } from './find-document.ts'
import { BadFile } from './json-document.ts'
import { readQuery } from './query-file.ts'

const usage = 'Give the name of one file, as in: npm run --silent find -- seen.json'

/** Why a file can't be opened, by the error's code. */
const reasons: ReadonlyMap<string | undefined, string> = new Map([
  ['ENOENT', 'there is no such file'],
  ['ENOTDIR', 'there is no such file'],
  ['EISDIR', 'it is a folder'],
  ['EACCES', 'its permissions do not allow it'],
  ['EPERM', 'its permissions do not allow it'],
])

const readText = (name: string, folder: string): string => {
  try {
    return readFileSync(resolve(folder, name), 'utf8')
  } catch (error) {
    const reason = reasons.get((error as NodeJS.ErrnoException).code)
    const why = reason === undefined ? '' : `: ${reason}`
    throw new BadFile(`The file ${quote(name)} can't be read${why}.`, { cause: error })
  }
}

/** Writes what may be wrong with the machine of the one file that it is given; a file that can't be read is refused. */
export const find: Command = async (args, io) => {
  const [name, ...others] = args
  if (name === undefined || others.length > 0) return refuse(usage, io)
  try {
    const query = readQuery(readText(name, io.folder), cardLibrary(cardsFolder))
    const inference = inferWhole(query)
    await io.write(findDocument(query, inference.finding, nextLooks(query, inference)))
    return 0
  } catch (error) {
    if (!(error instanceof BadFile)) throw error
    return refuse(error.message, io)
  }
}

if (import.meta.main) await runAsProcess(find)
