import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { root } from '@/setup/paths.mjs'
import { tool } from '@/setup/tool.mjs'

const folder = mkdtempSync(join(tmpdir(), 'circles-'))
afterAll(() => rmSync(folder, { recursive: true }))

/** What the project's own look for unused code says of two files of these texts, and its exit code. */
const lookedThrough = async (one: string, two: string): Promise<{ code: number; said: string }> => {
  const { include, rules, cycles } = JSON.parse(readFileSync(join(root, 'knip.json'), 'utf8')) as Record<
    'include' | 'rules' | 'cycles',
    object
  >
  const files = {
    'package.json': JSON.stringify({ name: 'circles', type: 'module' }),
    'knip.json': JSON.stringify({ include, rules, cycles, entry: ['one.ts'], project: ['*.ts'] }),
    'one.ts': one,
    'two.ts': two,
  }
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text)
  let said = ''
  const code = await tool(process.execPath, 'knip', [], { cwd: folder, collect: (text) => (said += text) })
  return { code, said }
}

test('no file may import what imports it, whether at once, when asked for, or through another', async () => {
  const two = "import './one.ts'\n"
  for (const one of ["import './two.ts'\n", "await import('./two.ts')\n"]) {
    const { code, said } = await lookedThrough(one, two)
    expect(said).toMatch(/one\.ts.*two\.ts/)
    expect(code).toBe(1)
  }
})

test('what is imported from one side only is no circle', async () => {
  expect(await lookedThrough("import './two.ts'\n", 'console.log(2)\n')).toEqual({ code: 0, said: '' })
})

test('types may go both ways, since nothing is left of them where code runs', async () => {
  const one = "import { type Two, two } from './two.ts'\nexport type One = Two\nconsole.log(two)\n"
  const two = "import type { One } from './one.ts'\nexport type Two = One | 2\nexport const two: Two = 2\n"
  expect((await lookedThrough(one, two)).said).not.toContain('→')
})
