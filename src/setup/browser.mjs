import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { run } from './child.mjs'
import { installFromDebian } from './debian.mjs'
import { environment } from './environment.mjs'
import { say } from './say.mjs'
import { tool } from './tool.mjs'

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']

/** Debian's Chromium without windows. */
const windowless = 'chromium-headless-shell'

/** @param {string[]} programs */
const onPath = (...programs) =>
  (process.env['PATH'] ?? '')
    .split(delimiter)
    .flatMap((folder) => programs.map((program) => join(folder, program)))

/** @returns {string[]} where a Chromium or Chrome usually is on this system */
function places() {
  const { LOCALAPPDATA = '', ProgramFiles = '' } = process.env
  if (process.platform === 'win32') {
    const chrome = 'Google\\Chrome\\Application\\chrome.exe'
    return [ProgramFiles, process.env['ProgramFiles(x86)'] ?? '', LOCALAPPDATA].map((base) =>
      join(base, chrome),
    )
  }
  if (process.platform !== 'darwin') return onPath(...names)
  return [
    ...onPath(...names),
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
  ]
}

const opening = `
  const { default: config } = await import('./playwright.config.ts')
  const { chromium } = await import('@playwright/test')
  const browser = await chromium.launch(config.use.launchOptions)
  await browser.close()`

/**
 * Whether a browser really opens, with the very options that the tests will use.
 * @param {string} node
 * @param {string} path of the browser, or '' for Playwright's own
 */
async function opens(node, path) {
  const env = { ...environment(node), CHROMIUM: path }
  const args = ['--input-type=module', '--eval', opening]
  return (await run(node, args, { env, output: 'ignore', timeLimit: 60_000 })) === 0
}

/**
 * The first of these browsers that opens.
 * @param {string} node
 * @param {string[]} paths
 */
async function firstToOpen(node, paths) {
  for (const path of paths) if (existsSync(path) && (await opens(node, path))) return path
  return undefined
}

/** @param {string} node */
const installed = (node) => firstToOpen(node, [process.env['CHROMIUM'] ?? '', ...places()])

/**
 * A browser to test and measure with, as people have it: one on the machine, else Playwright's own, else Debian's package.
 * @param {string} node path of the Node program
 * @returns {Promise<string | undefined>} its path, '' for Playwright's own, undefined if there is none
 */
export async function ensureBrowser(node) {
  const found = await installed(node)
  if (found !== undefined) return found
  if (await opens(node, '')) return ''
  say('The browser tests need a Chromium, and none was found: downloading Playwright’s own, into its cache.')
  await tool(node, 'playwright', ['install', 'chromium'], { output: 'ignore', timeLimit: 180_000 })
  if (await opens(node, '')) return ''
  await installFromDebian(
    ['chromium'],
    'The browser tests need a Chromium, and neither was one found nor could Playwright’s be downloaded.',
  )
  return installed(node)
}

/**
 * A browser for the tests: one without windows where there is one or Debian has it, since pages open in it in half the
 * time, else any. CHROMIUM names another.
 * @param {string} node path of the Node program
 * @returns {Promise<string | undefined>} as of `ensureBrowser`
 */
export async function ensureQuickBrowser(node) {
  if (process.env['CHROMIUM']) return ensureBrowser(node)
  const found = await firstToOpen(node, onPath(windowless))
  if (found !== undefined) return found
  // Playwright's own has no windows, either.
  if (await opens(node, '')) return ''
  await installFromDebian(
    [windowless],
    'The browser tests take half the time in a Chromium without windows, and none was found.',
  )
  return (await firstToOpen(node, onPath(windowless))) ?? ensureBrowser(node)
}

export const noBrowser =
  'No browser for the tests: please install Chromium or Chrome, or name one in the variable CHROMIUM.'
