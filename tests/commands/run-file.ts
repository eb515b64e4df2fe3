import { execFile } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import type { Ended } from './npm-run.ts'

/** Runs one of the commands' files with Node itself, to its end, as npm does for a person who stands in `folder`. */
export const runFileFrom = (folder: string, name: string, ...args: readonly string[]): Promise<Ended> =>
  new Promise((resolve) => {
    const env = { ...process.env, INIT_CWD: folder }
    const file = fileURLToPath(new URL(`../../src/commands/${name}.ts`, import.meta.url))
    const child = execFile(process.execPath, [file, ...args], { env, maxBuffer: 2 ** 28 }, (_, out, said) =>
      resolve({ code: child.exitCode ?? -1, out, said }),
    )
  })

/** The same from the folder of the tests' own run. */
export const runFile = (name: string, ...args: readonly string[]): Promise<Ended> =>
  runFileFrom(process.cwd(), name, ...args)
