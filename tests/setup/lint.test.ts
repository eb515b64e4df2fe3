import { execFile } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import ts from 'typescript-eslint'
import { root } from '@/setup/paths.mjs'
import { fileOf } from '@/setup/tool.mjs'

const settings = join(root, '.oxlintrc.json')
type Rules = Readonly<Record<string, unknown>>

const { overrides } = JSON.parse(readFileSync(settings, 'utf8')) as {
  overrides: readonly { readonly rules: Rules }[]
}
const rules = overrides[0]?.rules ?? {}

test('lint by types has every rule of the strictest set that needs types', () => {
  const strict = Object.assign(
    {},
    ...ts.configs.strictTypeChecked.map((config) => config.rules ?? {}),
  ) as Rules
  const typed = Object.keys(ts.configs.disableTypeChecked.rules ?? {}).filter((rule) => rule in strict)
  expect(typed.length).toBeGreaterThan(40)
  const missing = typed
    .map((rule) => rule.replace('@typescript-eslint/', 'typescript/'))
    .filter((rule) => !(rule in rules))
  // Only about classes that share a shape: the one rule that it does not know.
  expect(missing).toEqual(['typescript/no-unsafe-class-instance-assignment'])
  expect(rules).toHaveProperty(['typescript/switch-exhaustiveness-check'])
})

const folder = mkdtempSync(join(tmpdir(), 'lint-'))
afterAll(() => {
  rmSync(folder, { recursive: true })
})

/** What lint by types says of a file with this text, and how it ends. */
const linted = (text: string): Promise<{ code: number; said: string }> => {
  writeFileSync(
    join(folder, 'tsconfig.json'),
    '{ "compilerOptions": { "strict": true }, "include": ["*.ts"] }',
  )
  writeFileSync(join(folder, 'file.ts'), text)
  const args = [
    fileOf('oxlint'),
    '--type-aware',
    '--type-check',
    '--deny-warnings',
    '-c',
    settings,
    join(folder, 'file.ts'),
  ]
  return new Promise((done) => {
    execFile(process.execPath, args, { cwd: root }, (error, said) => {
      done({ code: Number(error?.code ?? 0), said })
    })
  })
}

test('lint by types fails on a wrong type, a promise that nobody waits for, and a case that a switch leaves out', async () => {
  const wrong = await linted("export const needles: number = 'two hundred'\n")
  expect(wrong).toMatchObject({ code: 1, said: expect.stringContaining('not assignable') as string })
  const wait = 'const wait = (): Promise<number> => Promise.resolve(1)\n'
  expect(await linted(`${wait}void wait()\n`)).toMatchObject({ code: 0 })
  const left = await linted(`${wait}wait()\n`)
  expect(left).toMatchObject({ code: 1, said: expect.stringContaining('no-floating-promises') as string })
  const open = `type Way = 'left' | 'right'
export const sign = (way: Way): number => {
  switch (way) {
    case 'left':
      return -1
  }
  return 1
}\n`
  expect((await linted(open)).said).toContain('switch-exhaustiveness-check')
}, 60_000)
