import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, rmSync } from 'node:fs'
import { join, relative } from 'node:path'
import { run } from './child.mjs'
import { environment } from './environment.mjs'
import { modules, results, root } from './paths.mjs'
import { say, Stop, title } from './say.mjs'
import { fileOf } from './tool.mjs'

/** What earlier builds left behind, so that each build here begins from nothing. */
const caches = [join(root, '.astro'), join(modules, '.astro'), join(modules, '.vite')]

/** Runs a program where there is no network: Linux alone can, and not everywhere. */
const apart = ['unshare', '--map-root-user', '--net']

/**
 * The sum of each file of a folder.
 * @param {string} folder
 * @returns {Map<string, string>}
 */
const sumsOf = (folder) =>
  new Map(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ parentPath, name }) => join(parentPath, name))
      .sort()
      .map((file) => [relative(folder, file), createHash('sha256').update(readFileSync(file)).digest('hex')]),
  )

/**
 * Builds the site from nothing into a folder.
 * @param {string} node path of the Node program
 * @param {string} folder
 * @param {NodeJS.ProcessEnv} [env] what the build's surroundings have beside the usual
 * @param {string[]} [before] a program that runs the build, with its arguments
 * @returns {Promise<Map<string, string>>}
 */
async function build(node, folder, env = {}, before = []) {
  for (const cache of [...caches, folder]) rmSync(cache, { recursive: true, force: true })
  const [program = node, ...args] = [...before, node, fileOf('astro'), 'build', '--outDir', folder]
  const code = await run(program, args, { env: { ...environment(node), ...env } })
  if (code !== 0) throw new Stop('The site could not be built: see above.')
  return sumsOf(folder)
}

/**
 * Builds twice, the second time in another time zone and language and, where the system can keep a program from it,
 * without a network; and compares every file.
 * @param {string} node path of the Node program
 * @returns {Promise<number>} how many files differ
 */
export async function reproducible(node) {
  const [program = '', ...args] = apart
  const canBeApart = (await run(program, [...args, 'true'], { output: 'ignore' })) === 0
  title('first build')
  const first = await build(node, join(results, 'builds', 'first'))
  title(canBeApart ? 'second build, without a network' : 'second build')
  const surroundings = { TZ: 'Pacific/Kiritimati', LC_ALL: 'C' }
  const second = await build(node, join(results, 'builds', 'second'), surroundings, canBeApart ? apart : [])

  const names = new Set([...first.keys(), ...second.keys()])
  const differing = [...names].filter((name) => first.get(name) !== second.get(name))
  for (const name of differing) say(`Not the same in both: ${name}`)
  if (!canBeApart) say('This system does not let a program run without a network, so that was not tried.')
  if (differing.length > 0) return differing.length
  const whole = createHash('sha256')
    .update([...first].join('\n'))
    .digest('hex')
  say(`\nBoth builds are the same: ${first.size} files, in all ${whole}.`)
  return 0
}
