// npm run --silent find -- FILE.json: what may be wrong with a machine, from what was seen on its bed, as one JSON
// document on standard output.

import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { infer } from '../find/infer.ts'
import { nextLooks } from '../find/next.ts'
import { quote } from '../link/troubles.ts'
import { cardLibrary, cardsFolder } from './cards.ts'
import { findDocument } from './find-document.ts'
import { BadFile, readQuery } from './find-file.ts'

const usage = 'Give the name of one file, as in: npm run --silent find -- seen.json'

const refuse = (reason: string): void => {
  process.stderr.write(`${reason}\n`)
  process.exitCode = 2
}

/** npm runs in the project's own folder; a file is meant from where its reader stands. */
const here = process.env['INIT_CWD'] ?? process.cwd()

const readText = (name: string): string => {
  try {
    return readFileSync(resolve(here, name), 'utf8')
  } catch (error) {
    throw new BadFile(`The file ${quote(name)} can't be read.`, { cause: error })
  }
}

// A reader that has seen enough, such as head, closes the pipe: no fault of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
  process.exit()
})

const find = (name: string): void => {
  try {
    const query = readQuery(readText(name), cardLibrary(cardsFolder))
    const finding = infer(query)
    process.stdout.write(findDocument(finding, nextLooks(query, finding)))
  } catch (error) {
    if (!(error instanceof BadFile)) throw error
    refuse(error.message)
  }
}

const [name, ...more] = process.argv.slice(2)
if (name === undefined || more.length > 0) refuse(usage)
else find(name)
