import { rmSync } from 'node:fs'
import { join } from 'node:path'
import { ensureBrowser, noBrowser } from './browser.mjs'
import { check } from './check.mjs'
import { count, playwrightCounts, readReport, vitestCounts } from './counts.mjs'
import { dist, results } from './paths.mjs'
import { say, title } from './say.mjs'
import { freePort } from './serve.mjs'
import { smokeTests } from './smoke.mjs'
import { tool } from './tool.mjs'

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
  const browser = await ensureBrowser(node)
  if (browser === undefined) {
    say(noBrowser)
    return oneFailure
  }
  const project = async (/** @type {string} */ name, /** @type {number} */ workers) => {
    const file = join(results, `browser ${name}.json`)
    const env = { CHROMIUM: browser, TEST_PORT: String(await freePort(4387)), REPORT: file }
    const code = await tool(node, 'playwright', ['test', `--project=${name}`, `--workers=${workers}`], {
      env,
    })
    return count(readReport(file), code, playwrightCounts)
  }
  return sum([await project('side by side', 2), await project('alone', 1)])
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

  const broken = await check(node)
  title('build')
  const built = (await tool(node, 'astro', ['build'])) === 0
  if (!built) broken.push('build')
  title('unit tests')
  const units = await unitTests(node)
  title('browser tests')
  const pages = built ? await browserTests(node) : notRun()
  title('smoke tests in other browsers')
  const others = built ? await smokeTests(node) : notRun()

  if (broken.length > 0) say(`\nFailed, each counted once: ${broken.join(', ')}.`)
  return sum([units, pages, others, { passed: 0, failed: broken.length }])
}
