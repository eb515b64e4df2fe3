import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { hazardBegins } from '@/site/hazards.ts'

const content = fileURLToPath(new URL('../../content/', import.meta.url))
const cautions = readdirSync(`${content}cautions`).map((name) => name.replace(/\.md$/, ''))
const faults = readdirSync(`${content}faults`).map((name) => ({
  name,
  text: readFileSync(`${content}faults/${name}`, 'utf8'),
}))

/** The steps of one list in a fault's front matter. */
const stepsOf = (text: string, list: string): string[] => {
  const [, lines = ''] = new RegExp(`^${list}:\n((?:  - .*\n)+)`, 'm').exec(text) ?? []
  return lines.split('\n').filter((line) => line !== '')
}

test('every caution has a work with which its hazard begins', () => {
  for (const id of cautions) expect(['outside', 'inside', 'mend']).toContain(hazardBegins(id))
  expect(() => hazardBegins('none')).toThrow('none')
})

// The earliest list whose steps have the hazard, by words that name it.
test.each([
  ['solvents', /solvent|spirit/i],
  ['springs', /take one cover off|with the cover off/i],
  ['unplug', /plug/i],
])('no step has the hazard of %s before its caution', (id, words) => {
  const works = ['outside', 'inside', 'mend'] as const
  const before = works.slice(0, works.indexOf(hazardBegins(id)))
  const steps = faults.flatMap(({ text }) => before.flatMap((list) => stepsOf(text, list)))
  expect(steps.length).toBeGreaterThan(30)
  expect(steps.filter((step) => words.test(step))).toEqual([])
  expect(
    faults.some(({ text }) => works.some((list) => stepsOf(text, list).some((step) => words.test(step)))),
  ).toBe(true)
})
