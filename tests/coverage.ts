import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'
import { slow } from './slow.ts'

const rooms = ['mechanism', 'link', 'find']

/** npm run coverage: how many branches of these rooms their quick tests take; fails on too few in any of them. */
export default defineConfig({
  resolve: { alias: { '@': fileURLToPath(new URL('../src', import.meta.url)) } },
  test: {
    include: [...rooms, 'outside'].map((room) => `tests/${room}/**/*.test.ts`),
    exclude: slow,
    // To count branches takes time, and that is no failure; a fifth of the made-up cases takes the same ones.
    env: { PROPERTY_SHARE: '0.2' },
    testTimeout: 120_000,
    coverage: {
      enabled: true,
      include: rooms.map((room) => `src/${room}/**/*.ts`),
      reporter: ['text'],
      reportsDirectory: '.results/coverage',
      thresholds: Object.fromEntries(rooms.map((room) => [`src/${room}/**`, { branches: 95 }])),
    },
  },
})
