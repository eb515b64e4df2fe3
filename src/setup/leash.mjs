// A process on a leash ends when the process that holds it is gone, however that one ended,
// so no server is left behind. Servers load this file with `node --import`.

import { readFileSync } from 'node:fs'

const shells = ['sh', 'dash', 'bash', 'ash', 'zsh', 'busybox']

/** @param {number} pid */
function lives(pid) {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM'
  }
}

/** @param {number} holder process id */
function leash(holder) {
  const look = () => {
    if (!lives(holder)) process.kill(process.pid, 'SIGTERM')
  }
  setInterval(look, 500).unref()
}

/**
 * npm may start a shell that starts this process, and that shell outlives a killed npm.
 * Where there is no /proc to ask, the servers' scripts have no shell between (see package.json).
 * @returns {number | undefined} the process id of that npm
 */
function npmAbove() {
  if (!process.env['npm_lifecycle_event']) return undefined
  const above = process.ppid
  try {
    const [, name, parent] = /\((.*)\) \S (\d+)/.exec(readFileSync(`/proc/${above}/stat`, 'utf8')) ?? []
    return shells.includes(name ?? '') ? Number(parent) : above
  } catch {
    return above
  }
}

/** Puts this process on npm's leash, and every server below it on this process's. */
export function leashToNpm() {
  const npm = npmAbove()
  if (npm) leash(npm)
  process.env['LEASH'] = String(process.pid)
}

const holder = Number(process.env['LEASH'])
if (holder) leash(holder)
