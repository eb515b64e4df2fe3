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
  const env = { CHROMIUM: browser, TEST_PORT: String(await freePort(4387)) }
  const code = await tool(node, 'playwright', ['test'], { env })
  return count(readReport(join(results, 'playwright.json')), code, playwrightCounts)
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
  const runs = [units, pages, others]
  return {
    passed: runs.reduce((sum, { passed }) => sum + passed, 0),
    failed: runs.reduce((sum, { failed }) => sum + failed, broken.length),
  }
}
