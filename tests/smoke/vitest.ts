import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

/** The smoke tests, a file for each browser: both at once, since each waits a good deal. */
export default defineConfig({
  resolve: { alias: { '@': fileURLToPath(new URL('../../src', import.meta.url)) } },
  test: {
    include: ['tests/smoke/*.spec.ts'],
    maxWorkers: 2,
    // That the machine is busy is no failure.
    testTimeout: 120_000,
    expect: { poll: { timeout: 30_000 } },
  },
})
