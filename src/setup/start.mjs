import { mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { networkInterfaces } from 'node:os'
import { join } from 'node:path'
import { basePath, networkAddresses } from './addresses.mjs'
import { codeText } from './code-text.mjs'
import { ensureRoom } from './file-trouble.mjs'
import { lives } from './end-with-parent.mjs'
import { served } from './paths.mjs'
import { say, Stop } from './say.mjs'
import { holdPort, serve } from './serve.mjs'
import { tool } from './tool.mjs'

/**
 * Builds the site into a folder, and gives the exit code.
 * @typedef {(node: string, folder: string, env: NodeJS.ProcessEnv) => Promise<number>} Build
 */

/** @type {Build} */
const buildInto = (node, folder, env) => tool(node, 'astro', ['build', '--outDir', folder], { env })

/**
 * A folder for what this process serves, which goes when it ends. One that an earlier process left behind is removed.
 * @returns {string}
 */
function ownFolder() {
  ensureRoom(served)
  for (const name of readdirSync(served))
    if (!lives(Number.parseInt(name, 10))) rmSync(join(served, name), { recursive: true, force: true })
  const folder = mkdtempSync(join(served, `${process.pid}-`))
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/**
 * What is said once the site is served.
 * @param {string} here its address on this machine
 * @param {string[]} there its addresses on the network
 * @param {boolean} isOpen whether it is served to the network
 */
async function announce(here, there, isOpen) {
  const [first, ...others] = there
  const write = (/** @type {string} */ line) => process.stdout.write(`${line}\n`)
  write(`The site is at ${first ?? here} (Ctrl+C ends it).`)
  if (!isOpen) {
    write(
      'Only this machine can open it. npm start -- --host serves it to the network this machine is on, too.',
    )
    return
  }
  if (first === undefined) {
    write('This machine is on no network, so only it can open the site.')
    return
  }
  const { isTTY } = process.stdout
  process.stdout.write(await codeText(first, isTTY && !process.env['NO_COLOR']))
  write('Anybody on this network can open the site while it runs.')
  if (others.length > 0) write(`Where that address does not answer: ${others.join(' or ')}`)
  write(`On this machine it is also at ${here}; links and codes made there lead to ${first}`)
}

/**
 * Builds the site and serves it until it is ended, to this machine or, with `--host`, to its network. Each site served is
 * built into a folder of its own: neither another start nor a build takes its pages away.
 * @param {string} node path of the Node program
 * @param {string[]} args
 * @param {Build} [build]
 * @returns {Promise<number>} an exit code
 */
export async function start(node, args, build = buildInto) {
  const strange = args.find((arg) => arg !== '--host')
  if (strange !== undefined)
    throw new Stop(
      `npm start does not know “${strange}”. It knows --host, and takes another port as PORT=8080 npm start.`,
    )
  const isOpen = args.includes('--host')
  const host = isOpen ? '0.0.0.0' : '127.0.0.1'
  const folder = ownFolder()
  const { port, release } = await holdPort(Number(process.env['PORT'] || 4321), host)
  const addressAt = (/** @type {string} */ name) => `http://${name}:${port}${basePath(process.env)}`
  const here = addressAt('localhost')
  const there = isOpen ? networkAddresses(networkInterfaces()).map(addressAt) : []
  const code = await build(node, folder, there[0] === undefined ? {} : { NETWORK_SITE: there[0] })
  await release()
  if (code !== 0) return code
  const ended = await serve(node, { folder, host, port, address: here }, () => announce(here, there, isOpen))
  if (ended === 1) say(`The site could not be served at ${here}.`)
  return ended
}
