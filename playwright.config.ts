import { defineConfig } from '@playwright/test'

const { CHROMIUM, TEST_PORT = '4387', BASE = '', REPORT = '.results/playwright.json' } = process.env
const base = `/${BASE}/`.replace(/\/+/g, '/')
const address = `http://127.0.0.1:${TEST_PORT}${base}`
const asRoot = process.getuid?.() === 0

/** What keeps time: nothing runs beside it. */
const alone = '**/play.spec.ts'

export default defineConfig({
  testDir: 'tests/browser',
  workers: 1,
  // Tests of one file too: the longest files would end long after all others.
  fullyParallel: true,
  projects: [
    { name: 'side by side', testIgnore: alone, outputDir: '.results/side by side' },
    { name: 'alone', testMatch: alone, outputDir: '.results/alone' },
    // Figures, for npm run measure: no part of the tests.
    { name: 'measure', testDir: 'tests/measure', outputDir: '.results/measure' },
  ],
  // Long enough for a machine a few times slower than those the tests were written on.
  timeout: 90_000,
  expect: { timeout: 15_000 },
  forbidOnly: Boolean(process.env.CI),
  reporter: [['list'], ['json', { outputFile: REPORT }]],
  use: {
    baseURL: address,
    // Only the specs about it want the worker: elsewhere it would answer in the server's place.
    serviceWorkers: 'block',
    launchOptions: {
      ...(CHROMIUM ? { executablePath: CHROMIUM } : {}),
      // Letters as wide as in print: a Chromium without windows else rounds their widths to pixels.
      // The rest keeps the browser from calling home, which slows it where it cannot.
      args: [
        ...(asRoot ? ['--no-sandbox'] : []),
        '--font-render-hinting=none',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        // Several browsers share the cores as it is: more threads in each only wait for one another.
        '--js-flags=--single-threaded',
      ],
    },
  },
  webServer: {
    command: `node --import ./src/setup/end-with-parent.mjs tests/browser/serve.mjs ${TEST_PORT} ${base}`,
    url: address,
    reuseExistingServer: false,
    timeout: 30_000,
  },
})
