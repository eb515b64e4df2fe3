import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { run } from './child.mjs'
import { count, readReport, vitestCounts } from './counts.mjs'
import { installFromDebian } from './debian.mjs'
import { environment } from './environment.mjs'
import { results } from './paths.mjs'
import { say } from './say.mjs'
import { tool } from './tool.mjs'

/**
 * A browser besides Chromium.
 * @typedef {object} Other
 * @property {string} name
 * @property {string} variable that names its program, here and for the tests
 * @property {() => string | undefined} find its program, if all that it needs is on this machine
 * @property {string[]} packages of Debian that bring it
 * @property {string} needs what must be there
 * @property {string} opener module and function that start it
 */

/**
 * @param {string} name
 * @returns {string | undefined} where a program of this name is on the PATH
 */
function onPath(name) {
  const folders = (process.env['PATH'] ?? '').split(delimiter)
  return folders.map((folder) => join(folder, name)).find((path) => existsSync(path))
}

function firefox() {
  const { FIREFOX = '', ProgramFiles = '' } = process.env
  const usual = [
    FIREFOX,
    '/Applications/Firefox.app/Contents/MacOS/firefox',
    join(ProgramFiles, 'Mozilla Firefox', 'firefox.exe'),
  ]
  return usual.find((path) => existsSync(path)) ?? onPath('firefox-esr') ?? onPath('firefox')
}

/** @type {Other[]} */
const others = [
  {
    name: 'Firefox',
    variable: 'FIREFOX',
    find: firefox,
    packages: ['firefox-esr'],
    needs: 'Firefox',
    opener: 'firefox.ts#openFirefox',
  },
  {
    name: 'WebKit',
    variable: 'WEBKIT',
    find: () => (onPath('Xvfb') ? onPath('WebKitWebDriver') : undefined),
    packages: ['webkit2gtk-driver', 'xvfb'],
    needs: 'WebKitGTK’s driver and Xvfb',
    opener: 'webkit.ts#openWebKit',
  },
]

/**
 * Opens a browser as the tests open it, to see whether it can be opened at all.
 * @param {string} node
 * @param {Other} other
 * @param {string} path
 * @returns {Promise<string | undefined>} what hinders it, in its own words; undefined where it opens
 */
async function trouble(node, { opener }, path) {
  const [file, start] = opener.split('#')
  const script = `
    const { ${start}: start } = await import('./tests/smoke/${file}')
    const browser = await start(${JSON.stringify(path)})
    await browser.open('about:blank').finally(browser.end)`
  const args = ['--input-type=module', '--eval', script]
  let output = ''
  const collect = (/** @type {string} */ text) => (output += text)
  const code = await run(node, args, { env: environment(node), collect, timeLimit: 60_000 })
  if (code === 0) return undefined
  return /^\w*Error.*$/m.exec(output)?.[0] ?? 'it gave no answer within a minute'
}

/**
 * @param {string} node
 * @param {Other} other
 * @returns {Promise<string | undefined>} its program; undefined, after a word why, where it cannot be had
 */
async function ensure(node, other) {
  const { name, needs, packages, find } = other
  if (find() === undefined) {
    const why = `The smoke tests in ${name} need ${needs}, and none was found.`
    await installFromDebian(packages, why, 180_000)
  }
  const path = find()
  if (path === undefined) {
    say(`${name}: its smoke tests were not run, because ${needs} could be neither found here nor installed.`)
    return undefined
  }
  const why = await trouble(node, other, path)
  if (why === undefined) return path
  say(`${name}: its smoke tests were not run, because ${path} does not open on this machine: ${why}.`)
  return undefined
}

/**
 * Runs the smoke tests of the built site in every browser besides Chromium that can be had here.
 * One that cannot be had counts as neither passed nor failed.
 * @param {string} node path of the Node program
 * @returns {Promise<import('./counts.mjs').Counts>}
 */
export async function smokeTests(node) {
  /** @type {Record<string, string>} */
  const env = {}
  for (const other of others) {
    const path = await ensure(node, other)
    if (path !== undefined) env[other.variable] = path
  }
  const specs = others.filter(({ variable }) => variable in env)
  if (specs.length === 0) return { passed: 0, failed: 0 }
  const file = join(results, 'smoke.json')
  const args = ['run', '--config', 'tests/smoke/vitest.ts', '--reporter=default', '--reporter=json']
  const files = specs.map(({ name }) => `tests/smoke/${name.toLowerCase()}.spec.ts`)
  const code = await tool(node, 'vitest', [...args, `--outputFile.json=${file}`, ...files], { env })
  return count(readReport(file), code, vitestCounts)
}
