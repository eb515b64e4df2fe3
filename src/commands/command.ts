import { once } from 'node:events'
import { fileTrouble } from '../setup/file-trouble.mjs'

/** What a command has of the world around it. */
export interface Io {
  /** The folder that file names start from. */
  readonly folder: string
  /** Writes to standard output, and waits where its reader is slow. */
  readonly write: (text: string) => Promise<void>
  /** Writes one line to standard error. */
  readonly say: (line: string) => void
}

/** A command: does what its arguments ask for, and gives its exit code: 0 done, 1 not good enough, 2 bad input. */
export type Command = (args: readonly string[], io: Io) => number | Promise<number>

/** Says why the input is bad, and gives the exit code for it. */
export const refuse = (reason: string, { say }: Io): number => {
  say(reason)
  return 2
}

/** The world of a command that runs as a process of its own. */
const processIo: Io = {
  // npm runs in the project's own folder; a file's name is meant from where its reader is.
  folder: process.env['INIT_CWD'] ?? process.cwd(),
  async write(text) {
    if (!process.stdout.write(text)) await once(process.stdout, 'drain')
  },
  say: (line) => void process.stderr.write(`${line}\n`),
}

/** Ends this process with 1 and a sentence where something could not be written; throws any other error. */
const endWith = (error: unknown): void => {
  const trouble = fileTrouble(error, 'The output')
  if (trouble === null) throw error
  processIo.say(trouble)
  process.exit(1)
}

/** Runs a command as this process, with the process's own arguments. */
export const runAsProcess = async (command: Command): Promise<void> => {
  // A reader that has seen enough, such as head, closes the pipe: that is no error.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit()
    endWith(error)
  })
  try {
    process.exitCode = await command(process.argv.slice(2), processIo)
  } catch (error) {
    endWith(error)
  }
}
