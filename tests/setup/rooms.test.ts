import { join } from 'node:path'
import { ESLint } from 'eslint'
import astro from 'eslint-plugin-astro'
import { describe, expect, test, vi } from 'vitest'
import ts from 'typescript-eslint'
import { root } from '@/setup/paths.mjs'
import { roomRules } from '@/setup/rooms.mjs'

// The rules of rooms only: types would have to be found for files that don't exist.
// The first file has all plug-ins to load.
vi.setConfig({ testTimeout: 60_000 })

const eslint = new ESLint({
  cwd: root,
  overrideConfigFile: true,
  overrideConfig: [
    { files: ['**/*.ts'] },
    ts.configs.base,
    ...astro.configs.base,
    ...roomRules,
  ] as ESLint.Options['overrideConfig'],
})

/** The rules that a file breaks with this text, without repeats. */
const broken = async (file: string, text: string): Promise<string[]> => {
  const [result] = await eslint.lintText(text, { filePath: join(root, file) })
  return [...new Set(result?.messages.map(({ ruleId, message }) => ruleId ?? message))]
}

/** Rules broken by an import on its own. */
const importing = (file: string, source: string) => broken(file, `import '${source}'\n`)

const dependencies = ['boundaries/dependencies']
const globals = ['no-restricted-globals']

/** A room's file, then what it may import, then what it may not. */
const imports: [file: string, right: string[], wrong: string[]][] = [
  [
    'src/mechanism/new.ts',
    ['./bed.ts'],
    ['../words/lists.ts', '../link/read.ts', 'd3', 'node:fs', 'valibot'],
  ],
  ['src/find/new.ts', ['./infer.ts', '../mechanism/bed.ts'], ['../words/lists.ts', '../link/read.ts', 'd3']],
  ['src/link/new.ts', ['../mechanism/bed.ts'], ['../words/lists.ts', '../lesson/mark.ts', 'node:fs', 'd3']],
  ['src/words/new.ts', ['../mechanism/bed.ts', '../find/infer.ts'], ['../link/read.ts', 'valibot']],
  ['src/lesson/new.ts', ['../words/lists.ts', '../link/read.ts'], ['../drawings/shared/svg.ts', 'node:path']],
  [
    'src/drawings/chain/new.ts',
    ['../shared/svg.ts', '../../mechanism/bed.ts', '../../words/lists.ts', 'd3'],
    ['../../link/read.ts', '../../browser/dom.ts', 'gsap', 'linkedom', 'node:fs'],
  ],
  [
    'src/browser/new.ts',
    ['../link/read.ts', 'gsap/gsap-core'],
    ['../features/machine/main.ts', 'node:fs', 'd3'],
  ],
  [
    'src/features/quiz/new.ts',
    ['./main.ts', '../../browser/dom.ts', '../../drawings/shared/svg.ts', 'minisearch'],
    ['../../site/faults.ts', '../machine/play.ts', '../machine/Machine.astro', 'node:fs', 'fs', 'linkedom'],
  ],
  [
    'src/workers/new.ts',
    ['../find/infer.ts'],
    ['../browser/dom.ts', '../features/machine/main.ts', 'node:fs'],
  ],
  [
    'src/site/new.ts',
    ['node:fs', 'svgo', '../drawings/shared/svg.ts'],
    ['../features/machine/play.ts', 'gsap'],
  ],
  [
    'src/integrations/new.ts',
    ['node:fs', '../site/faults.ts'],
    ['../browser/dom.ts', '../features/machine/main.ts'],
  ],
  ['src/commands/new.ts', ['node:fs', '../find/infer.ts'], ['../site/faults.ts', '../browser/dom.ts', 'd3']],
  ['src/setup/new.mjs', ['./paths.mjs', 'node:fs'], ['../mechanism/bed.ts', 'astro']],
  ['src/pages/new.ts', ['../site/faults.ts', 'astro:content'], ['node:fs', 'gsap']],
]

describe('what a room imports', () => {
  test.each(imports)('%s', async (file, right, wrong) => {
    for (const source of right) expect(await importing(file, source), source).toEqual([])
    for (const source of wrong) expect(await importing(file, source), source).toEqual(dependencies)
  })

  test('is also checked in exports, types and imports when needed', async () => {
    for (const text of [
      `export * from '../words/lists.ts'`,
      `export { andList } from '../words/lists.ts'`,
      `export const later = () => import('../words/lists.ts')`,
      `import type { List } from '../words/lists.ts'`,
      `export type List = import('../words/lists.ts').List`,
    ])
      expect(await broken('src/mechanism/new.ts', text), text).toEqual(dependencies)
  })

  test('is checked in markup, which the build runs, and in its scripts, which the browser runs', async () => {
    const markup = (front: string, script = '') =>
      `---\n${front}\n---\n<p>Text</p>\n<script>\n${script}\n</script>\n`
    for (const file of ['src/features/machine/New.astro', 'src/pages/chapters/new.astro']) {
      expect(await broken(file, markup(`import { faults } from '../../site/faults.ts'`)), file).toEqual([])
      expect(await broken(file, markup(`import { readFileSync } from 'node:fs'`)), file).toEqual(dependencies)
      expect(await broken(file, markup('', `import '../../browser/dom.ts'`)), file).toEqual([])
      expect(await broken(file, markup('', `import '../../features/machine/main.ts'`)), file).toEqual([])
      expect(await broken(file, markup('', `import '../../site/faults.ts'`)), file).toEqual(dependencies)
      expect(await broken(file, markup('', `import 'node:fs'`)), file).toEqual(dependencies)
      expect(await broken(file, markup('', `import '../../features/machine/play.ts'`)), file).toEqual(
        dependencies,
      )
    }
  })

  test('is named as Node needs it where Node runs a room as it is', async () => {
    for (const room of ['mechanism', 'find', 'link', 'words', 'lesson', 'commands']) {
      expect(await importing(`src/${room}/new.ts`, '../mechanism/bed'), room).toEqual(['import-x/extensions'])
      expect(await importing(`src/${room}/new.ts`, '@/mechanism/bed.ts'), room).toEqual(dependencies)
    }
  })

  test('counts only in a room: a file of src in none of them is an error', async () => {
    expect(await broken('src/attic/new.ts', 'export {}')).toEqual(['boundaries/no-unknown-files'])
    expect(await broken('src/new.ts', 'export {}')).toEqual(['boundaries/no-unknown-files'])
    expect(await broken('src/content.config.ts', 'export {}')).toEqual([])
  })
})

describe('what a room’s code takes for granted', () => {
  const uses = (name: string) => `export const it = () => ${name}\n`

  test('is no page where the build runs it', async () => {
    for (const name of ['document', 'window', 'localStorage'])
      for (const room of ['site', 'integrations', 'pages', 'commands'])
        expect(await broken(`src/${room}/new.ts`, uses(name)), `${room} ${name}`).toEqual(globals)
    expect(await broken('src/features/machine/New.astro', `---\nconst it = document\n---\n`)).toEqual(globals)
    expect(await broken('src/features/machine/New.astro', `<script>\n${uses('document')}</script>`)).toEqual(
      [],
    )
    // A document of its own is another matter.
    const own = `import { parseHTML } from 'linkedom'\nconst { document } = parseHTML('')\n${uses('document')}`
    expect(await broken('src/site/new.ts', own)).toEqual([])
  })

  test('is no Node where the browser runs it', async () => {
    for (const name of ['process', 'Buffer', '__dirname'])
      for (const room of ['features/machine', 'browser', 'drawings/chain', 'workers', 'words', 'link'])
        expect(await broken(`src/${room}/new.ts`, uses(name)), `${room} ${name}`).toEqual(globals)
    expect(await broken('src/features/machine/new.ts', uses('document'))).toEqual([])
    expect(await broken('src/site/new.ts', uses('process'))).toEqual([])
  })

  test('is neither where anything may run it, and no window in a worker', async () => {
    for (const room of ['mechanism', 'find', 'link', 'words', 'lesson', 'drawings/chain', 'workers'])
      expect(await broken(`src/${room}/new.ts`, uses('document')), room).toEqual(globals)
    expect(await broken('src/workers/new.ts', uses('self'))).toEqual([])
  })

  test('is nothing at all in the model', async () => {
    for (const name of ['Date', 'fetch', 'URL', 'console', 'setTimeout', 'globalThis'])
      expect(await broken('src/mechanism/new.ts', uses(name)), name).toEqual(globals)
    expect(await broken('src/mechanism/new.ts', uses('Math.random()'))).toEqual(['no-restricted-properties'])
    expect(await broken('src/mechanism/new.ts', uses('Math.sqrt(2)'))).toEqual([])
  })
})

test('the project’s own lint has these rules', async () => {
  const own = new ESLint({ cwd: root })
  const rulesOf = async (file: string) =>
    ((await own.calculateConfigForFile(join(root, file))) as { rules: Record<string, [number]> }).rules
  for (const file of ['src/mechanism/bed.ts', 'src/features/machine/main.ts', 'src/site/faults.ts']) {
    const rules = await rulesOf(file)
    for (const name of [...dependencies, ...globals]) expect(rules[name]?.[0], `${file} ${name}`).toBe(2)
  }
})
