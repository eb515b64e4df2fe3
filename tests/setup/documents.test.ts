import { existsSync, globSync, readFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { root } from '@/setup/paths.mjs'

const documents = globSync(['*.md', '{src,tests,content}/**/*.md'], { cwd: root }).sort()

/** The names of all files of the code. */
const files = new Set(
  globSync(['*.*', '{src,tests,content}/**/*.*'], { cwd: root }).map((file) => basename(file)),
)

/** What a document links to in this project: paths of files, without anchors. */
const linksOf = (text: string): string[] =>
  [...text.matchAll(/\]\(([^)\s#]+)[^)]*\)/g)]
    .map(([, link = '']) => link)
    .filter((link) => !/^[a-z]+:/.test(link))

/** Files and folders that a document names in code, in a folder of the project; not those with capitals in the place of a name. */
const pathsOf = (text: string): string[] =>
  [...text.matchAll(/`((?:src|tests|content|public)\/[\w./-]+)`/g)]
    .map(([, path = '']) => path)
    .filter((path) => !/\bN+\b|NAME/.test(path))

describe('documents', () => {
  test('are there for newcomers, and the first is one page', () => {
    expect(documents).toEqual(
      expect.arrayContaining(['DEVELOPERS.md', 'README.md', join('src', 'setup', 'README.md')]),
    )
    expect(readFileSync(join(root, 'DEVELOPERS.md')).length).toBeLessThanOrEqual(8192)
  })

  test.each(documents)('%s links to files that are there, and names no other', (name) => {
    const text = readFileSync(join(root, name), 'utf8')
    const missing = [
      ...linksOf(text).filter((link) => !existsSync(join(root, dirname(name), link))),
      ...pathsOf(text).filter((path) => !existsSync(join(root, path))),
    ]
    expect(missing).toEqual([])
  })

  test.each(documents)('%s names files by names that there are', (name) => {
    const named = [
      ...readFileSync(join(root, name), 'utf8').matchAll(/`([a-z][a-z0-9-]*\.(?:ts|mjs|css|astro))`/g),
    ]
    expect(named.map(([, file = '']) => file).filter((file) => !files.has(file))).toEqual([])
  })

  test('would be found out with a link that leads nowhere', () => {
    expect(linksOf('[a](src/a.md#top) [b](https://example.org) ![c](b/c.png "title")')).toEqual([
      'src/a.md',
      'b/c.png',
    ])
    expect(pathsOf('`src/a.ts`, `a.ts`, `src/b`, `src/NAME.ts`, `src/a-NN.ts`')).toEqual([
      'src/a.ts',
      'src/b',
    ])
  })
})
