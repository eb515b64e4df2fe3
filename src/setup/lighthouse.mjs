import { spawn } from 'node:child_process'
import { copyFileSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { ensureBrowser, noBrowser } from './browser.mjs'
import { run } from './child.mjs'
import { environment } from './environment.mjs'
import { npm } from './npm.mjs'
import { dist, results, root, tools } from './paths.mjs'
import { say, Stop } from './say.mjs'
import { freePort } from './serve.mjs'

/** Lighthouse and a server that compresses as hosts do: fetched only for this, since they are large. */
const own = join(root, 'src', 'setup', 'lighthouse')
const folder = join(tools, 'lighthouse')
const reports = join(results, 'lighthouse')

/** One page of every kind. */
const pages = [
  '',
  'chapters/',
  'chapters/the-whole-journey/',
  'chapters/rockers-and-strips/',
  'parts/',
  'workbench/',
  'find/',
  'find/test-card/',
  'faults/',
  'faults/strip-seized/',
  'job/',
  'measure/',
  'case/#title=Your+machine&break=strip.3.seized&end=1',
  'case/?make#break=strip.3.seized',
  'class/rockers-and-strips/',
  'class/rockers-and-strips/speaker/',
  'embed/gates/',
  'embed/scene/',
  'embed/fabric/#pass=2&at=L12&break=strip.3.seized',
  'teach/',
  'true-of-every-machine/',
  'paper/',
  'paper/fault-chart/',
  'paper/worksheets/',
  'paper/test-card/',
  'paper/check-list/',
  'paper/measure/',
  'paper/parts/',
  'paper/catch-sheet/',
  'paper/needle-table/',
  'paper/nothing-selected/',
  'paper/handouts/',
  'paper/handouts/on-the-bench/',
  'paper/pack/',
  'offline/',
  'glossary/',
  'sources/',
  'search/',
  'licences/',
]

const categories = ['performance', 'accessibility', 'best-practices', 'seo']

/** The least score of each category; the most of each measure, in ms and for the shift without unit. */
const least = [98, 100, 100, 100]
const most = { 'largest-contentful-paint': 1200, 'cumulative-layout-shift': 0.001, 'total-blocking-time': 50 }

/** @param {string} node */
async function ensureLighthouse(node) {
  const lock = 'package-lock.json'
  const text = readFileSync(join(own, lock), 'utf8')
  const stamp = join(folder, 'installed-from.json')
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === text) return
  say('Fetching Lighthouse into .tools, once.')
  mkdirSync(folder, { recursive: true })
  for (const file of ['package.json', lock]) copyFileSync(join(own, file), join(folder, file))
  const code = await npm(node, ['ci', '--ignore-scripts'], folder)
  if (code !== 0) throw new Stop('Lighthouse could not be fetched: is the package registry in reach?')
  writeFileSync(stamp, text)
}

/**
 * @param {string} node
 * @param {string} browser
 * @param {string} address
 * @param {string} file where the report goes
 */
async function measure(node, browser, address, file) {
  const code = await run(
    node,
    [
      join(folder, 'node_modules', 'lighthouse', 'cli', 'index.js'),
      address,
      '--quiet',
      '--output=json',
      `--output-path=${file}`,
      `--only-categories=${categories.join(',')}`,
      // Pages for other people's frames ask not to be found by themselves.
      ...(address.includes('/embed/') ? ['--skip-audits=is-crawlable'] : []),
      '--chrome-flags=--headless --no-sandbox --disable-gpu --disable-background-networking',
    ],
    { env: { ...environment(node), CHROME_PATH: browser }, timeLimit: 180_000 },
  )
  if (code !== 0) throw new Stop(`Lighthouse could not measure ${address}.`)
  return JSON.parse(readFileSync(file, 'utf8'))
}

/** How often a page is measured; an odd number. */
const times = 3

/** @param {number[]} values */
const median = (values) => values.toSorted((one, other) => one - other)[values.length >> 1] ?? NaN

/**
 * Scores, measures and what falls short in a page's reports: of each figure the median.
 * @param {any[]} all
 */
function judged(all) {
  const scores = categories.map((id) =>
    median(all.map(({ categories: scored }) => Math.round((scored[id]?.score ?? 0) * 100))),
  )
  const values = Object.keys(most).map((id) =>
    median(all.map(({ audits }) => Number(audits[id]?.numericValue ?? NaN))),
  )
  const short = [
    ...categories.filter((_, n) => (scores[n] ?? 0) < (least[n] ?? 0)),
    ...Object.entries(most).flatMap(([id, limit], n) => ((values[n] ?? NaN) <= limit ? [] : [id])),
  ]
  const failed = Object.values(all.at(-1).audits)
    .filter(({ score, scoreDisplayMode }) => score !== null && score < 1 && scoreDisplayMode === 'binary')
    .map(({ id }) => id)
  return { scores, values, short, failed }
}

/**
 * Measures one page and prints its line.
 * @param {string} node
 * @param {string} browser
 * @param {number} port of the server
 * @param {string} page
 */
async function isShort(node, browser, port, page) {
  const file = join(reports, `${page.replace(/[^a-z-]+/g, '_') || 'home'}.json`)
  const all = []
  for (let time = 0; time < times; time += 1)
    all.push(await measure(node, browser, `http://localhost:${port}/${page}`, file))
  const { scores, values, short, failed } = judged(all)
  const [paint = NaN, shift = NaN, blocking = NaN] = values
  const figures = `${Math.round(paint)} ms, ${shift.toFixed(3)}, ${Math.round(blocking)} ms`
  const verdict = short.length > 0 ? ` SHORT: ${short.join(', ')} (${failed.join(', ')})` : ''
  process.stdout.write(`${scores.join(' ')} | ${figures} | /${page}${verdict}\n`)
  return short.length > 0
}

/**
 * Measures a page of every kind of the built site with the mobile preset, three times each, and prints a table.
 * @param {string} node path of the Node program
 * @param {string[]} only parts of addresses, to measure fewer pages
 * @returns {Promise<number>} how many pages fall short
 */
export async function lighthouse(node, only) {
  if (!existsSync(dist)) throw new Stop('There is no built site yet: run npm run build first.')
  await ensureLighthouse(node)
  const browser = await ensureBrowser(node)
  if (!browser) throw new Stop(noBrowser)
  mkdirSync(reports, { recursive: true })
  const port = await freePort(4500)
  const program = join(folder, 'node_modules', 'serve', 'build', 'main.js')
  const server = spawn(node, [program, '-l', String(port), dist], { stdio: 'ignore' })
  const chosen = pages.filter((page) => only.length === 0 || only.some((part) => page.includes(part)))
  process.stdout.write('performance access practices seo | largest paint, shift, blocking | page\n')
  let missed = 0
  try {
    for (const page of chosen) if (await isShort(node, browser, port, page)) missed += 1
  } finally {
    server.kill()
  }
  return missed
}
