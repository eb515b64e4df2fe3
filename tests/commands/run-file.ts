import { execFile } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import type { Ended } from './npm-run.ts'

/** Runs one of the commands' files with Node itself, to its end. */
export const runFile = (name: string, ...args: readonly string[]): Promise<Ended> =>
  new Promise((resolve) => {
    const file = fileURLToPath(new URL(`../../src/commands/${name}.ts`, import.meta.url))
    const child = execFile(process.execPath, [file, ...args], { maxBuffer: 2 ** 28 }, (_, out, said) =>
      resolve({ code: child.exitCode ?? -1, out, said }),
    )
  })
