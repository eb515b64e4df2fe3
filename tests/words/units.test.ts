import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { millimetres, withUnit } from '@/words/lists.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** The files of a folder that hold texts for readers. */
const textsIn = (folder: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(astro|ts|md|mdx)$/.test(name) && !name.endsWith('README.md'))
    .map((name) => join(folder, name))

/** Where a number, or what is written in its place, is before a unit with a space at which a line may break. */
const breakable = /(?:\d|\}) (?:mm\/s|mm|ms|%)(?![\w-])/

test('a number and its unit stay on one line, in every text', () => {
  expect(millimetres(0.37)).toBe('0.37\u00a0mm')
  expect(withUnit(500, 'mm/s')).toBe('500\u00a0mm/s')
  const texts = [
    ...['words', 'lesson', 'drawings', 'features', 'pages', 'layouts'].map((room) => `src/${room}`),
    'content',
  ]
    .flatMap(textsIn)
    .flatMap((name) =>
      readFileSync(join(root, name), 'utf8')
        .split('\n')
        .filter((line) => !/^\s*(\/?\*|\/\/)/.test(line) && breakable.test(line))
        .map((line) => `${name}: ${line.trim()}`),
    )
  expect(texts).toEqual([])
})
