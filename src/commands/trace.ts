// npm run --silent trace -- '<text of a link>': what the model makes of it, as one JSON document on standard output.

import { once } from 'node:events'
import { read } from '../link/read.ts'
import { cardLibrary, cardsFolder } from './cards.ts'
import { traceDocument } from './trace-document.ts'

const usage = "Give the text of one link, as in: npm run --silent trace -- 'pass=3&break=strip.3.seized'"

const refuse = (reason: string): void => {
  process.stderr.write(`${reason}\n`)
  process.exitCode = 2
}

const trace = async (text: string): Promise<void> => {
  const library = cardLibrary(cardsFolder)
  const { state, troubles } = read(text, library)
  const [first, ...more] = troubles.filter(({ kind }) => kind === 'left out')
  if (first) {
    refuse(more.length === 0 ? first.sentence : `${first.sentence} (And ${more.length} more.)`)
    return
  }
  for (const { sentence } of troubles) process.stderr.write(`${sentence}\n`)
  for (const piece of traceDocument(state, library))
    if (!process.stdout.write(piece)) await once(process.stdout, 'drain')
}

// A reader that has seen enough, such as head, closes the pipe: no fault of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
  process.exit()
})

const [text, ...more] = process.argv.slice(2)
if (text === undefined || more.length > 0) refuse(usage)
else await trace(text)
