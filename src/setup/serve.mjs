import { createServer } from 'node:net'
import { setTimeout as wait } from 'node:timers/promises'
import { pathToFileURL } from 'node:url'
import { join } from 'node:path'
import { run } from './child.mjs'
import { environment } from './environment.mjs'
import { root } from './paths.mjs'
import { fileOf } from './tool.mjs'

const thisMachine = '127.0.0.1'

/**
 * Takes the first free port from one on, so that nobody else gets it before it is used.
 * @param {number} first
 * @param {string} [host] the address at which the port is to be free
 * @returns {Promise<{ port: number, release: () => Promise<void> }>}
 */
export function holdPort(first, host = thisMachine) {
  return new Promise((resolve, reject) => {
    // Whoever comes before there is anything to serve is sent away: a connection left open would keep the port.
    const holder = createServer((socket) => socket.destroy())
    holder.once('error', () => {
      if (first < 65535) resolve(holdPort(first + 1, host))
      else reject(new Error('No free port.'))
    })
    const release = () =>
      new Promise((/** @type {(value: void) => void} */ done) => holder.close(() => done()))
    holder.listen(first, host, () => resolve({ port: first, release }))
  })
}

/**
 * @param {number} first
 * @returns {Promise<number>} the first free port from there on
 */
export async function freePort(first) {
  const { port, release } = await holdPort(first)
  await release()
  return port
}

/** @param {string} address */
async function answers(address) {
  for (let tries = 0; tries < 120; tries += 1) {
    if (await fetch(address).then(Boolean, () => false)) return true
    await wait(250)
  }
  return false
}

/**
 * Serves a built site until it is ended.
 * @param {string} node path of the Node program
 * @param {{ folder: string, host: string, port: number, address: string }} site its folder, where it is served, and an
 * address of it on this machine
 * @param {() => Promise<void>} ready called once it answers
 * @returns {Promise<number>} the server's exit code
 */
export async function serve(node, { folder, host, port, address }, ready) {
  const endWithParent = pathToFileURL(join(root, 'src', 'setup', 'end-with-parent.mjs')).href
  const preview = ['preview', '--ignore-lock', '--outDir', folder, '--host', host, '--port', String(port)]
  const args = ['--import', endWithParent, fileOf('astro'), ...preview]
  const ended = run(node, args, { env: environment(node), output: 'ignore' })
  if (await Promise.race([answers(address), ended.then(() => false)])) await ready()
  return ended
}
