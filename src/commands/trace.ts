// npm run --silent trace -- '<text of a link>': what the model makes of it, as one JSON document on standard output.

import { read } from '../link/read.ts'
import { cardLibrary, cardsFolder } from './cards.ts'
import { type Command, refuse, runAsProcess } from './command.ts'
import { traceDocument } from './trace-document.ts'

const usage = "Give the text of one link, as in: npm run --silent trace -- 'pass=3&break=strip.3.seized'"

/** Writes the trace of the one link that it is given; what the link gives that can't be read is refused. */
export const trace: Command = async (args, io) => {
  const [text, ...others] = args
  if (text === undefined || others.length > 0) return refuse(usage, io)
  const library = cardLibrary(cardsFolder)
  const { state, troubles } = read(text, library)
  const [first, ...more] = troubles.filter(({ kind }) => kind === 'left out')
  if (first)
    return refuse(more.length === 0 ? first.problem : `${first.problem} (And ${more.length} more.)`, io)
  for (const { sentence } of troubles) io.say(sentence)
  for (const piece of traceDocument(state, library)) await io.write(piece)
  return 0
}

if (import.meta.main) await runAsProcess(trace)
