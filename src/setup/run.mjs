// node src/setup/run.mjs NAME [arguments]: sets up what is missing, then does what NAME says.
// NAME is one of the tasks below, a tool (vitest, playwright, …), or a file in src/commands.

import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { checkAddresses } from './addresses.mjs'
import { ensureQuickBrowser, noBrowser } from './browser.mjs'
import { check } from './check.mjs'
import { endTogether, run } from './child.mjs'
import { environment } from './environment.mjs'
import { ensureRoom, fileTrouble } from './file-trouble.mjs'
import { endWithNpm } from './end-with-parent.mjs'
import { lighthouse } from './lighthouse.mjs'
import { measure } from './measure.mjs'
import { ensureNode } from './node.mjs'
import { ensurePackages } from './packages.mjs'
import { dist, release, root } from './paths.mjs'
import { reproducible } from './reproducible.mjs'
import { say, Stop } from './say.mjs'
import { smokeTests } from './smoke.mjs'
import { durationsInWords } from './stages.mjs'
import { start } from './start.mjs'
import { testAll } from './test.mjs'
import { isTool, markup, tool } from './tool.mjs'

/** @typedef {(node: string, args: string[]) => Promise<number>} Task */

/** @type {Task} */
const build = (node, args) => {
  ensureRoom(dist)
  return tool(node, 'astro', ['build', ...args])
}

/** What builds or serves the site, and so needs to know its address. */
const needAddresses = ['build', 'dev', 'measure', 'pack', 'reproducible', 'start', 'test']

/** @type {Record<string, Task>} */
const tasks = {
  build,
  dev: (node, args) => tool(node, 'astro', ['dev', ...args]),
  format: async (node) =>
    (await tool(node, 'oxfmt', ['.'])) || tool(node, 'prettier', ['--write', '--log-level', 'warn', markup]),
  start,
  async pack(node) {
    const file = join(root, 'src', 'integrations', 'pack', 'main.ts')
    ensureRoom(release)
    return (await build(node, [])) || run(node, [file, dist, release], { env: environment(node) })
  },
  async check(node) {
    const failed = await check(node)
    say(`\nTook: ${durationsInWords()}.`)
    say(failed.length > 0 ? `Failed: ${failed.join(', ')}.` : 'All checks passed.')
    return failed.length
  },
  coverage: (node) => tool(node, 'vitest', ['run', '--config', 'tests/coverage.ts']),
  lighthouse,
  measure,
  reproducible,
  async playwright(node, args) {
    const browser = await ensureQuickBrowser(node)
    if (browser === undefined) throw new Stop(noBrowser)
    return tool(node, 'playwright', args, { env: { CHROMIUM: browser } })
  },
  async smoke(node) {
    if (!existsSync(dist)) throw new Stop('There is no built site yet: run npm run build first.')
    return (await smokeTests(node)).failed
  },
  async test(node) {
    const { passed, failed } = await testAll(node)
    process.stdout.write(`\ntests: ${passed} passed, ${failed} failed\n`)
    return failed > 0 ? 1 : 0
  },
}

/**
 * @param {string} name
 * @returns {Task}
 */
function taskFor(name) {
  const task = tasks[name]
  if (task) return task
  if (isTool(name)) return (node, args) => tool(node, name, args)
  const file = join(root, 'src', 'commands', `${name}.ts`)
  if (/^[a-z-]+$/.test(name) && existsSync(file)) {
    return (node, args) => run(node, [file, ...args], { env: environment(node), cwd: process.cwd() })
  }
  throw new Stop(`There is no task, tool or command named “${name}”.`)
}

const [name = 'start', ...args] = process.argv.slice(2)
endTogether()
endWithNpm()
try {
  const task = taskFor(name)
  if (needAddresses.includes(name)) checkAddresses(process.env)
  const node = await ensureNode()
  await ensurePackages(node)
  process.exitCode = await task(node, args)
} catch (error) {
  const trouble = error instanceof Stop ? error.message : fileTrouble(error)
  if (trouble !== null) say(trouble)
  else console.error(error)
  if (name === 'test') process.stdout.write('\ntests: 0 passed, 1 failed\n')
  process.exitCode = 1
}
