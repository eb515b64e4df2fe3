import type { Command } from '@/commands/command.ts'
import type { Ended } from './npm-run.ts'

/** Runs a command in the tests' own process, as if its reader were in `folder`. */
export const runHere = async (
  command: Command,
  args: readonly string[],
  folder = process.cwd(),
): Promise<Ended> => {
  let out = ''
  let said = ''
  const code = await command(args, {
    folder,
    write(text) {
      out += text
      return Promise.resolve()
    },
    say(line) {
      said += `${line}\n`
    },
  })
  return { code, out, said }
}
