import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { speeds } from '@/find/battery.ts'
import { type Check, checks } from '@/find/checks.ts'
import { outlineOf } from '@/site/chapter-outline.ts'
import { stages } from '@/site/check-list.ts'
import { checkWords } from '@/words/checks.ts'

const root = fileURLToPath(new URL('../../content/', import.meta.url))
const files = (folder: string): { name: string; text: string }[] =>
  readdirSync(root + folder).map((name) => ({ name, text: readFileSync(`${root}${folder}/${name}`, 'utf8') }))

/** What somebody is asked to do, step by step, and the cautions that stand beside it. */
interface Work {
  readonly name: string
  readonly steps: readonly string[]
  readonly cautions: readonly string[]
}

const faults = files('faults').map(({ name, text }): Work => ({
  name,
  steps: [...text.matchAll(/^ {2}- "(.*)"$/gm)].map(([, step = '']) => step),
  cautions: /^cautions: \[(.*)\]$/m.exec(text)?.[1]?.split(', ') ?? [],
}))
const chapters = files('chapters').map(({ name, text }): Work => ({
  name,
  steps: [(text.split('## By hand')[1] ?? '').replaceAll(/\s+/g, ' ')],
  cautions: outlineOf(text).components.flatMap(({ name: component, attributes }) =>
    component === 'Caution' ? (attributes.get('of') ?? []) : [],
  ),
}))
const byTable = checks.map((check: Check): Work => ({
  name: check.id,
  steps: [checkWords[check.id]],
  cautions: check.cautions,
}))
const list: Work = {
  name: 'check list',
  steps: stages.flatMap(({ ticks }) => ticks),
  cautions: stages.flatMap(({ cautions }) => cautions),
}
const everyWork = [...faults, ...chapters, ...byTable, list]

/** The works in which a step is put in such words, each held against a rule; at least one there must be. */
const where = (works: readonly Work[], words: RegExp): Work[] => {
  const found = works.filter(({ steps }) => steps.some((step) => words.test(step)))
  expect(found.length).toBeGreaterThan(0)
  return found
}

const caution = (id: string): string => readFileSync(`${root}cautions/${id}.md`, 'utf8')

describe('the caution on solvents', () => {
  test.each([
    /eye protection/,
    /only a little at a time/,
    /none down a drain/,
    /local rules send it/,
    /adult beside them/,
    /flat outdoors or keep them in a closed metal tin, as local rules say/,
    /retainer bar out first/,
  ])('says %s', (words) => {
    expect(caution('solvents')).toMatch(words)
  })

  test('is there, with that on plastic, wherever old oil is taken off', () => {
    const cleaning = /\b(?:clean\w*|loosen the old oil|solvent)\b/i
    for (const { name, cautions } of where([...faults, ...chapters], cleaning))
      expect(cautions, name).toEqual(expect.arrayContaining(['solvents', 'plastics']))
  })
})

describe('hands, hooks and dust', () => {
  test('a needle is exchanged or drawn only once the retainer bar is out, and hooks are sharp', () => {
    const drawing = /(?:exchange|draw out|draw|change) (?:the|that|a) needle/i
    for (const { name, steps, cautions } of where(everyWork, drawing)) {
      expect(steps.join(' '), name).toMatch(/retainer bar(?: drawn)? ?out|draw out the retainer bar/i)
      expect(cautions, name).toContain('hooks')
    }
  })

  test('whoever draws the bar is warned of its dust', () => {
    const bar = /draw (?:out )?the (?:retainer )?bar|retainer bar (?:drawn )?out/i
    for (const { name, cautions } of where(everyWork, bar)) expect(cautions, name).toContain('dust')
  })

  test('nobody is sent to feel along the bed, and glasses are safety glasses', () => {
    for (const { name, text } of ['cautions', 'chapters', 'faults', 'guide'].flatMap(files)) {
      expect(text, name).not.toMatch(/(?<!never )feel along/i)
      expect(text, name).not.toMatch(/(?<!safety )glasses/i)
    }
  })

  test('lifting says where to hold, and how to turn a bed over', () => {
    expect(caution('lifting')).toMatch(/hands under its metal base/)
    expect(caution('lifting')).toMatch(/take the carriage off, lay something soft over the hooks/)
  })
})

describe('a moving carriage', () => {
  test('is watched with a cover off only after a word, and its caution is there', () => {
    for (const { name, steps, cautions } of where(everyWork, /cover off/i)) {
      if (!steps.some((step) => /\bwatch\b.*(?:carriage|card)/.test(step))) continue
      expect(steps.join(' '), name).toMatch(/One person says go/)
      expect(cautions, name).toContain('fingers')
    }
    expect(caution('fingers')).toMatch(/only one says go/)
  })

  test('goes fast at a metre a second at most, and never before it has gone slowly', () => {
    expect(speeds.fast).toBeLessThanOrEqual(900)
    for (const { name, steps } of where(everyWork, /\bfast\b/)) {
      const words = steps.join(' ')
      expect(words.search(/slow/), name).toBeGreaterThanOrEqual(0)
      expect(words.search(/slow/), name).toBeLessThan(words.search(/\bfast\b/))
    }
  })
})

test('a needle without a butt stops everything, on its page and in the table of checks', () => {
  const page = faults.find(({ name }) => name === 'needle-gone.md')
  for (const words of [page?.steps.join(' ') ?? '', checkWords['broken-piece']]) {
    expect(words).toMatch(/^Stop/)
    expect(words).toMatch(/lamp/)
    expect(words).toMatch(/tweezers or a magnet before .* moves/)
  }
})
