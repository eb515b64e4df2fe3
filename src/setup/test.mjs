import { existsSync, rmSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { join } from 'node:path'
import { ensureQuickBrowser, noBrowser } from './browser.mjs'
import { check } from './check.mjs'
import { count, playwrightCounts, readReport, vitestCounts } from './counts.mjs'
import { dist, results } from './paths.mjs'
import { say } from './say.mjs'
import { freePort } from './serve.mjs'
import { smokeTests } from './smoke.mjs'
import { durationsInWords, stage } from './stages.mjs'
import { tool } from './tool.mjs'

/** One more than there are cores, since each waits now and then; more than a few would want much memory. */
const workers = Math.min(availableParallelism() + 1, 5)

const oneFailure = { passed: 0, failed: 1 }

/** @param {import('./counts.mjs').Counts[]} runs */
const sum = (runs) => ({
  passed: runs.reduce((all, { passed }) => all + passed, 0),
  failed: runs.reduce((all, { failed }) => all + failed, 0),
})

function notRun() {
  say('Not run, because there is no built site.')
  return oneFailure
}

/** @param {string} node */
async function unitTests(node) {
  const file = join(results, 'vitest.json')
  const args = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${file}`]
  const code = await tool(node, 'vitest', args)
  return count(readReport(file), code, vitestCounts)
}

/** @param {string} node */
async function browserTests(node) {
  const browser = await ensureQuickBrowser(node)
  if (browser === undefined) {
    say(noBrowser)
    return oneFailure
  }
  const project = async (/** @type {string} */ name, /** @type {number} */ atOnce) => {
    const file = join(results, `browser ${name}.json`)
    const env = { CHROMIUM: browser, TEST_PORT: String(await freePort(4387)), REPORT: file }
    const code = await tool(node, 'playwright', ['test', `--project=${name}`, `--workers=${atOnce}`], {
      env,
    })
    return count(readReport(file), code, playwrightCounts)
  }
  return sum([await project('side by side', workers), await project('alone', 1)])
}

/**
 * Checks, builds and tests everything, whatever fails on the way.
 * Checks and the build are no tests: they count only when they fail.
 * @param {string} node path of the Node program
 * @returns {Promise<import('./counts.mjs').Counts>}
 */
export async function testAll(node) {
  rmSync(results, { recursive: true, force: true })
  rmSync(dist, { recursive: true, force: true })

  const build = {
    title: 'build',
    run: (/** @type {(text: string) => void} */ collect) => tool(node, 'astro', ['build'], { collect }),
  }
  const broken = await stage('checks and build', () => check(node, [build]))
  const built = !broken.includes('build') && existsSync(dist)
  const units = await stage('unit tests', () => unitTests(node))
  const pages = await stage('browser tests', async () => (built ? browserTests(node) : notRun()))
  const others = await stage('smoke tests in other browsers', async () =>
    built ? smokeTests(node) : notRun(),
  )

  say(`\nTook: ${durationsInWords()}.`)
  if (broken.length > 0) say(`Failed, each counted once: ${broken.join(', ')}.`)
  return sum([units, pages, others, { passed: 0, failed: broken.length }])
}
