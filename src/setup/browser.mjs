import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { run } from './child.mjs'
import { installFromDebian } from './debian.mjs'
import { environment } from './environment.mjs'
import { say } from './say.mjs'
import { tool } from './tool.mjs'

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']

/** @returns {string[]} where a Chromium or Chrome usually is on this system */
function places() {
  const { PATH = '', LOCALAPPDATA = '', ProgramFiles = '' } = process.env
  if (process.platform === 'win32') {
    const chrome = 'Google\\Chrome\\Application\\chrome.exe'
    return [ProgramFiles, process.env['ProgramFiles(x86)'] ?? '', LOCALAPPDATA].map((base) =>
      join(base, chrome),
    )
  }
  const onPath = PATH.split(delimiter).flatMap((folder) => names.map((name) => join(folder, name)))
  if (process.platform !== 'darwin') return onPath
  return [
    ...onPath,
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

/** @param {string} node */
async function installed(node) {
  const paths = [process.env['CHROMIUM'] ?? '', ...places()].filter((path) => existsSync(path))
  for (const path of paths) if (await opens(node, path)) return path
  return undefined
}

/**
 * A browser for the tests: one on the machine, else Playwright's own, else Debian's package.
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

export const noBrowser =
  'No browser for the tests: please install Chromium or Chrome, or name one in the variable CHROMIUM.'
