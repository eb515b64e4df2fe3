import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { packageOf, unlicensed } from '@/integrations/licences.ts'
import { licences } from '@/site/licences.ts'
import { root } from '@/setup/paths.mjs'

const textOf = (name: string): string => readFileSync(join(root, name), 'utf8')

type Versions = Readonly<Record<string, string>>

interface Locked {
  readonly version?: string
  readonly integrity?: string
  readonly resolved?: string
  readonly dependencies?: Versions
  readonly devDependencies?: Versions
}

const { dependencies, devDependencies } = JSON.parse(textOf('package.json')) as Required<
  Pick<Locked, 'dependencies' | 'devDependencies'>
>
const { packages } = JSON.parse(textOf('package-lock.json')) as { packages: Readonly<Record<string, Locked>> }
const wanted = { ...dependencies, ...devDependencies }

describe('the packages', () => {
  test('are wanted in one exact version each, the one that is locked', () => {
    for (const [name, version] of Object.entries(wanted)) {
      expect(version, name).toMatch(/^\d+\.\d+\.\d+$/)
      expect(packages[`node_modules/${name}`]?.version, name).toBe(version)
    }
    expect(packages['']).toMatchObject({ dependencies, devDependencies })
  })

  test('are locked with a sum each, from the registry and nowhere else', () => {
    const locked = Object.entries(packages).filter(([place]) => place !== '')
    expect(locked.length).toBeGreaterThan(500)
    for (const [place, { version, integrity, resolved }] of locked) {
      expect(version, place).toMatch(/^\d+\.\d+\.\d+/)
      expect(integrity, place).toMatch(/^sha512-/)
      expect(resolved, place).toBeUndefined()
    }
  })

  test('run no script of their own when they are installed', () => {
    expect(textOf('.npmrc').split('\n')).toContain('ignore-scripts=true')
  })

  test('each have a line that says why', () => {
    const table = textOf('src/setup/README.md').split('## Dependencies, and why')[1] ?? ''
    const reasons = table
      .split('\n')
      .map((line) => line.split('|').map((cell) => cell.trim()))
      .filter(([, names = '', why = '']) => /^[@a-z]/.test(names) && why.length > 20)
    const named = reasons.flatMap(([, names = '']) => names.split(/,\s*|\s/))
    for (const name of Object.keys(wanted).filter((each) => !each.startsWith('@expo-google-fonts/')))
      expect(named, name).toContain(name)
  })
})

describe('licences', () => {
  test('are there for all that is sent, with version and text', () => {
    const named = licences()
    for (const { name, version, kind } of named) {
      expect(packages[`node_modules/${name}`]?.version).toBe(version)
      expect(kind).toMatch(/^(MIT|ISC|0BSD|BSD-3-Clause|MPL-2\.0|OFL-1\.1|Standard 'no charge' license: .*)$/)
    }
    expect(named.filter(({ text }) => text === '').map(({ name }) => name)).toEqual(['gsap'])
  })

  test('that are lacking stop the build: the modules of a bundle show whose it is', () => {
    expect(packageOf('/x/node_modules/a/node_modules/@b/c/d.js')).toBe('@b/c')
    expect(packageOf('/x/src/node.ts')).toBeNull()
    expect(packageOf('/x/node_modules/.astro/font-subsets/a.woff2')).toBeNull()
    const used = { renderedLength: 1 }
    const modules = {
      '/x/node_modules/strange/a.js': used,
      '/x/node_modules/gsap/b.js': used,
      '/x/node_modules/left-out/c.js': { renderedLength: 0 },
      '/x/src/d.ts': used,
    }
    expect(unlicensed([{ type: 'chunk', modules }, { type: 'asset' }])).toEqual(['strange'])
  })
})
