import { existsSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { ensureBrowser, noBrowser } from './browser.mjs'
import { readReport } from './counts.mjs'
import { dist, results, root } from './paths.mjs'
import { say, Stop } from './say.mjs'
import { freePort } from './serve.mjs'
import { tool } from './tool.mjs'

/**
 * A figure as tests/measure notes it on a test.
 * @typedef {object} Figure
 * @property {string} what is measured
 * @property {string} figure with its unit
 * @property {string} aim in words; empty for a figure without one
 * @property {boolean} met whether the figure reaches the aim
 */

/** What the site is built from. */
const sources = ['src', 'content', 'public', 'astro.config.mjs', 'package-lock.json'].map((name) =>
  join(root, name),
)

/** @param {string} path @returns {number} when it or anything in it was last changed, in ms */
function lastChange(path) {
  const inside = statSync(path).isDirectory() ? readdirSync(path, { recursive: true, encoding: 'utf8' }) : []
  return Math.max(...[path, ...inside.map((name) => join(path, name))].map((file) => statSync(file).mtimeMs))
}

/** @returns {boolean} whether the built site is missing or older than what it is built from */
function needsBuild() {
  const page = join(dist, 'index.html')
  return !existsSync(page) || sources.some((source) => lastChange(source) > statSync(page).mtimeMs)
}

/**
 * @param {any} suite of Playwright's report
 * @returns {Figure[]}
 */
const figuresOf = (suite) => [
  ...(suite.suites ?? []).flatMap(figuresOf),
  ...(suite.specs ?? [])
    .flatMap((/** @type {any} */ spec) => spec.tests)
    .flatMap((/** @type {any} */ test) =>
      test.results.flatMap((/** @type {any} */ result) => result.annotations),
    )
    .filter((/** @type {any} */ note) => note.type === 'figure')
    .map((/** @type {any} */ note) => JSON.parse(note.description)),
]

/**
 * @param {string[][]} rows of cells, the first the heads
 * @returns {string} a table in Markdown
 */
function table(rows) {
  const widths = (rows[0] ?? []).map((_, n) => Math.max(...rows.map((row) => row[n]?.length ?? 0)))
  const line = (/** @type {string[]} */ row) =>
    `| ${row.map((cell, n) => cell.padEnd(widths[n] ?? 0)).join(' | ')} |`
  const [heads = [], ...others] = rows
  return [line(heads), line(widths.map((width) => '-'.repeat(width))), ...others.map(line)].join('\n')
}

/**
 * Measures the built site in a browser with nothing beside it, building it first where it is missing or out of date,
 * and prints a table of the figures with their aims.
 * @param {string} node path of the Node program
 * @returns {Promise<number>} 0 where each aim is met and each measurement came to its end
 */
export async function measure(node) {
  if (needsBuild() && (await tool(node, 'astro', ['build'])) !== 0)
    throw new Stop('The site could not be built.')
  const browser = await ensureBrowser(node)
  if (browser === undefined) throw new Stop(noBrowser)
  const file = join(results, 'measure.json')
  const env = { CHROMIUM: browser, TEST_PORT: String(await freePort(4387)), REPORT: file }
  const code = await tool(node, 'playwright', ['test', '--project=measure', '--workers=1'], { env })
  const figures = figuresOf(readReport(file) ?? {})
  const rows = figures.map(({ what, figure, aim, met }) => [
    what,
    figure,
    aim,
    aim === '' ? '' : met ? 'yes' : 'NO',
  ])
  process.stdout.write(`\n${table([['what', 'figure', 'aim', 'met'], ...rows])}\n`)
  const missed = figures.filter(({ met }) => !met)
  if (missed.length > 0) say(`\nAims missed: ${missed.map(({ what }) => what).join('; ')}.`)
  if (code !== 0 || figures.length === 0) say('\nNot all could be measured: see above.')
  return code !== 0 || figures.length === 0 || missed.length > 0 ? 1 : 0
}
