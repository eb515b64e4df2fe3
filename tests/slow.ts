/** Proofs over very many machines. Where tests are counted or changed, the quick ones must do without them. */
export const slow = [
  'tests/mechanism/chance.test.ts',
  'tests/mechanism/trials-agree.test.ts',
  'tests/link/hostile.test.ts',
  'tests/find/chart.test.ts',
  'tests/find/dictionary.test.ts',
  'tests/find/likeness-all.test.ts',
  'tests/find/test-card.test.ts',
  'tests/find/proof/**',
  'tests/outside/cam.test.ts',
  'tests/outside/stack-up.test.ts',
]
