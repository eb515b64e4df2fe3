// A server ends when the process that started it is gone, however that one ended, so none is left behind. Servers load
// this file with `node --import`.

import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { basename } from 'node:path'

const shells = ['sh', 'dash', 'bash', 'ash', 'zsh', 'ksh', 'fish', 'busybox', 'cmd.exe']

/** @typedef {{ name: string, parent: number }} Process */
/** @typedef {(pid: number) => Process | undefined} Look */

/** @param {number} pid @returns {boolean} whether there is such a process */
export function lives(pid) {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM'
  }
}

/** @param {number} parent process id */
function endWith(parent) {
  const look = () => {
    if (!lives(parent)) process.kill(process.pid, 'SIGTERM')
  }
  setInterval(look, 500).unref()
}

/**
 * A process as Linux describes it in /proc.
 * @type {Look}
 */
export function lookInProc(pid) {
  const [, name, parent] = /\((.*)\) \S (\d+)/.exec(readFileSync(`/proc/${pid}/stat`, 'utf8')) ?? []
  return name === undefined ? undefined : { name, parent: Number(parent) }
}

/**
 * A process as `ps` describes it, where there is no /proc: on a Mac, say.
 * @type {Look}
 */
export function askPs(pid) {
  const line = execFileSync('ps', ['-o', 'ppid=', '-o', 'comm=', '-p', String(pid)], { encoding: 'utf8' })
  const [, parent, name] = /^\s*(\d+)\s+-?(.+?)\s*$/m.exec(line) ?? []
  return name === undefined ? undefined : { name: basename(name), parent: Number(parent) }
}

/**
 * npm may start a shell that starts this process, and that shell outlives an npm that was killed: so the first
 * process above this one that is not a shell counts as the parent.
 * @param {Look[]} looks ways to find out about a process, of which the first that works counts
 * @returns {number} the process id of npm; of the process right above where no way works
 */
function npmAbove(looks) {
  for (const look of looks) {
    try {
      let pid = process.ppid
      for (let found = look(pid); found && shells.includes(found.name) && found.parent > 1; found = look(pid))
        pid = found.parent
      return pid
    } catch {
      // This system does not have it: the next way may work.
    }
  }
  return process.ppid
}

/**
 * Ends this process with npm where npm started it, and every server below it with this process.
 * @param {Look[]} [looks]
 */
export function endWithNpm(looks = [lookInProc, askPs]) {
  if (process.env['npm_lifecycle_event']) endWith(npmAbove(looks))
  process.env['SERVER_PARENT'] = String(process.pid)
}

const parent = Number(process.env['SERVER_PARENT'])
if (parent) endWith(parent)
