import { join } from 'node:path'

/** The room of src whose code is changed; src/commands/mutation.ts names it. */
const room = process.env['MUTATED_ROOM'] ?? 'mechanism'

/**
 * Not among the results, which every run of all tests clears, nor among the tools, which may be a link to another folder:
 * Vitest finds no tests in a copy that has two addresses.
 */
const kept = '.mutation'

/** @type {import('@stryker-mutator/api/core').PartialStrykerOptions} */
export default {
  mutate: [`src/${room}/**/*.ts`],
  testRunner: 'vitest',
  vitest: { configFile: 'tests/mutation/vitest.ts' },
  coverageAnalysis: 'perTest',
  // What is computed once, as a file is read, is changed too, though all tests must run for it.
  ignoreStatic: false,
  // Room for whatever else the machine does.
  concurrency: 1,
  // A busy machine's slowness must not count as found: only what goes on far longer than all its tests took.
  timeoutMS: 15_000,
  // All tests of the search for faults, run once with the code made changeable, on a busy machine.
  dryRunTimeoutMinutes: 30,
  ignorePatterns: ['/dist', '/.mutation', '/.tools', '/.astro', '/.ci', '/.results', '/public'],
  disableTypeChecks: false,
  tempDirName: join(kept, 'copy'),
  incremental: true,
  incrementalFile: join(kept, `${room}.json`),
  reporters: ['clear-text', 'json', 'progress'],
  clearTextReporter: { allowColor: false, reportTests: false },
  jsonReporter: { fileName: join('.results', 'mutation', `${room}.json`) },
}
