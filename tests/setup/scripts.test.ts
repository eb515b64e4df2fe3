import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { root } from '@/setup/paths.mjs'

const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  scripts: Readonly<Record<string, string>>
}

/** A program and its plain words, which mean the same without a shell and in every shell. */
const isPlain = (script: string): boolean => /^node src\/setup\/run\.mjs( [\w./-]+)+$/.test(script)

describe('the scripts of package.json', () => {
  test.each(Object.entries(scripts))('%s means the same in every shell', (name, script) => {
    expect(isPlain(script), script).toBe(true)
    expect(script).toBe(`node src/setup/run.mjs ${name}`)
  })

  test('would be found out with a shell’s own words and signs', () => {
    for (const script of [
      'exec node src/setup/run.mjs start',
      'node src/setup/run.mjs build && node src/setup/run.mjs pack',
      'node src/setup/run.mjs build; true',
      'node src/setup/run.mjs test | tee log',
      'node src/setup/run.mjs test > log',
      'PORT=1 node src/setup/run.mjs start',
      'node src/setup/run.mjs start $PORT',
      'node src/setup/run.mjs start %PORT%',
      'node src/setup/run.mjs "start"',
      "node src/setup/run.mjs 'start'",
      'node src/setup/run.mjs start &',
      'node src/setup/run.mjs vitest tests/*',
      'node src/setup/run.mjs vitest `which x`',
    ])
      expect(isPlain(script), script).toBe(false)
  })
})
