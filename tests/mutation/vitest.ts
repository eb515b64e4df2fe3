import { basename } from 'node:path'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'
import { BaseSequencer, type TestSpecification } from 'vitest/node'
import { slow } from '../slow.ts'

/** The room of src whose code is changed; its own tests must find every change. */
const room = process.env['MUTATED_ROOM'] ?? 'mechanism'

/** Tests over whole dictionaries or every combination, too long for every change; what they hold is held by smaller ones too. */
const large = ['enumeration', 'memo', 'next', 'one-inference', 'own', 'reference', 'small-bed'].map(
  (name) => `tests/find/${name}.test.ts`,
)

/** First the tests of the changed file's own name, then the quickest, since the first failure ends a mutant. */
class NearestFirst extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const { config, cache } = this.ctx
    const changed = (config.related ?? []).map((file) => basename(file, '.ts'))
    const rank = (file: TestSpecification): number =>
      changed.includes(basename(file.moduleId, '.test.ts'))
        ? 0
        : 1 + (cache.getTestSpecificationResult(file)?.duration ?? 0)
    return Promise.resolve([...files].sort((one, other) => rank(one) - rank(other)))
  }
}

/** The quick tests of one room, for Stryker to hold against every change of it. */
export default defineConfig({
  resolve: { alias: { '@': fileURLToPath(new URL('../../src', import.meta.url)) } },
  test: {
    include: [`tests/${room}/**/*.test.ts`, 'tests/outside/*.test.ts'],
    exclude: [...slow, ...large],
    setupFiles: ['tests/mutation/setup.ts'],
    env: { PROPERTY_SHARE: '0.05' },
    sequence: { sequencer: NearestFirst },
    // One process for all files of a mutant: to start one takes longer than most of them.
    isolate: false,
    // Stryker ends what goes on for ever; that the machine is busy is no failure.
    testTimeout: 120_000,
  },
})
