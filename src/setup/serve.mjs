import { createServer } from 'node:net'
import { setTimeout as wait } from 'node:timers/promises'
import { pathToFileURL } from 'node:url'
import { join } from 'node:path'
import { run } from './child.mjs'
import { environment } from './environment.mjs'
import { root } from './paths.mjs'
import { fileOf } from './tool.mjs'

const host = '127.0.0.1'

/**
 * @param {number} first
 * @returns {Promise<number>} the first free port from there on
 */
export function freePort(first) {
  return new Promise((resolve, reject) => {
    const probe = createServer()
    probe.once('error', () => {
      if (first < 65535) resolve(freePort(first + 1))
      else reject(new Error('No free port.'))
    })
    probe.listen(first, host, () => probe.close(() => resolve(first)))
  })
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
 * Serves the built site until it is ended.
 * @param {string} node path of the Node program
 * @param {string[]} args more arguments for `astro preview`
 */
export async function serve(node, args) {
  const port = await freePort(Number(process.env['PORT']) || 4321)
  const base = `/${process.env['BASE'] ?? ''}/`.replace(/\/+/g, '/')
  const address = `http://localhost:${port}${base}`
  const leash = pathToFileURL(join(root, 'src', 'setup', 'leash.mjs')).href
  const preview = [
    fileOf('astro'),
    'preview',
    '--ignore-lock',
    '--host',
    host,
    '--port',
    String(port),
    ...args,
  ]
  const ended = run(node, ['--import', leash, ...preview], { env: environment(node), output: 'ignore' })
  const ready = await Promise.race([answers(address), ended.then(() => false)])
  if (ready) process.stdout.write(`The site is at ${address} (Ctrl+C ends it).\n`)
  return ended
}
