import { execFile } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../../', import.meta.url))

export interface Ended {
  readonly code: number
  readonly out: string
  readonly said: string
}

/** Runs one of the commands as a user in `folder` does, `npm run --silent NAME -- …`, to its end. */
export const npmRunFrom = (folder: string, name: string, ...args: readonly string[]): Promise<Ended> =>
  new Promise((resolve) => {
    const words = ['--prefix', root, 'run', '--silent', name, ...(args.length > 0 ? ['--', ...args] : [])]
    const child = execFile('npm', words, { cwd: folder, maxBuffer: 2 ** 28 }, (_, out, said) =>
      resolve({ code: child.exitCode ?? -1, out, said }),
    )
  })

/** The same for a user in the project's own folder. */
export const npmRun = (name: string, ...args: readonly string[]): Promise<Ended> =>
  npmRunFrom(root, name, ...args)

/** Long enough for a busy machine. */
export const patience = 180_000
