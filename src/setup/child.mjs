import { spawn } from 'node:child_process'
import { root } from './paths.mjs'

/**
 * @typedef {object} Options
 * @property {NodeJS.ProcessEnv} [env]
 * @property {string} [cwd]
 * @property {number} [timeLimit] milliseconds
 * @property {'inherit' | 'to-stderr' | 'ignore'} [output] where the child's standard output goes
 * @property {(text: string) => void} [collect] gets all that the child prints, instead of output
 * @property {boolean} [shell]
 */

/** @type {Set<import('node:child_process').ChildProcess>} */
const running = new Set()

/**
 * Runs a program to its end. Never throws: a program that cannot start has exit code 127.
 * @param {string} program
 * @param {string[]} args
 * @param {Options} [options]
 * @returns {Promise<number>} the exit code
 */
export function run(
  program,
  args,
  { env = process.env, cwd = root, timeLimit, output = 'inherit', collect, shell } = {},
) {
  const quiet = output === 'ignore'
  const out = output === 'to-stderr' ? 2 : output
  return new Promise((resolve) => {
    const child = spawn(program, args, {
      cwd,
      env,
      timeout: timeLimit,
      shell,
      stdio: collect
        ? ['ignore', 'pipe', 'pipe']
        : [quiet ? 'ignore' : 'inherit', out, quiet ? 'ignore' : 'inherit'],
    })
    if (collect)
      for (const stream of [child.stdout, child.stderr]) stream?.setEncoding('utf8').on('data', collect)
    running.add(child)
    child.once('error', () => {
      running.delete(child)
      resolve(127)
    })
    // With pipes, what it printed last may arrive after its end.
    child.once(collect ? 'close' : 'exit', (code, signal) => {
      running.delete(child)
      resolve(code ?? (signal === 'SIGINT' ? 130 : 143))
    })
  })
}

/** On a signal to end, ends the children first and then this process with the signal's usual exit code. */
export function endTogether() {
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
    process.once(signal, () => {
      const code = { SIGINT: 130, SIGTERM: 143, SIGHUP: 129 }[signal]
      let waiting = running.size
      if (waiting === 0) process.exit(code)
      for (const child of running) {
        child.once('exit', () => {
          waiting -= 1
          if (waiting === 0) process.exit(code)
        })
        child.kill(signal)
      }
      setTimeout(() => {
        for (const child of running) child.kill('SIGKILL')
        process.exit(code)
      }, 4000)
    })
  }
}
