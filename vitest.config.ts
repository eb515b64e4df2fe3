import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  resolve: { alias: { '@': fileURLToPath(new URL('./src', import.meta.url)) } },
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'node_modules/**'],
    // All cores: by itself Vitest leaves one idle.
    maxWorkers: '100%',
    // Files share what a process has loaded: to load it for each takes longer than most of them.
    isolate: false,
    // Long enough for a machine a few times slower than those the tests were written on.
    testTimeout: 60_000,
    hookTimeout: 60_000,
    coverage: { provider: 'v8', include: ['src/**/*.ts'], reportsDirectory: '.results/coverage' },
  },
})
