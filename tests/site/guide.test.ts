import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { outlineOf } from '@/site/chapter-outline.ts'
import { beginnings, courses } from '@/site/course-plan.ts'
import { read } from '@/link/read.ts'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'

const root = fileURLToPath(new URL('../../', import.meta.url))
const guide = outlineOf(readFileSync(`${root}content/guide/teaching.mdx`, 'utf8'))
const named = (attribute: string): string[] =>
  guide.components.flatMap(({ attributes }) => attributes.get(attribute) ?? [])

const folder = `${root}content/chapters/`
const steps = new Set(
  readdirSync(folder).flatMap((name) =>
    outlineOf(readFileSync(folder + name, 'utf8')).steps.map(
      ({ id }) => `${name.replace(/^\d+-(.*)\.mdx$/, '$1')}/${id}`,
    ),
  ),
)

describe('the teacher’s guide', () => {
  test.each([...new Set(named('state'))])('links to %s, which reads without troubles', (state) => {
    expect(read(state, cardLibrary(cardsFolder)).troubles).toEqual([])
  })
  test.each(named('step'))('shows the step %s, which there is', (step) => {
    expect(steps.has(step)).toBe(true)
  })
  test.each(named('to'))('leads to %s, which there is', (address) => {
    const there = [`${address}.astro`, `${address}/index.astro`].map((file) =>
      existsSync(`${root}src/pages/${file}`),
    )
    expect(there).toContain(true)
  })
  test('has links of all three kinds', () => {
    for (const attribute of ['state', 'step', 'to']) expect(named(attribute).length).toBeGreaterThan(5)
  })
})

describe.each(Object.entries(courses))('the %s', (_, course) => {
  test('takes as long as it says', () => {
    const last = course.stretches.at(-1)
    expect((beginnings(course).at(-1) ?? 0) + (last?.minutes ?? 0)).toBe(course.minutes)
  })
  test('begins each stretch at a step that there is, and asks something there', () => {
    for (const { at, ask } of course.stretches) {
      if (at !== undefined) expect(steps.has(at), at).toBe(true)
      expect(ask === undefined).toBe(at === undefined)
    }
  })
  test('never asks for longer than three quarters of an hour in one go, but for the meal', () => {
    for (const { minutes, at } of course.stretches)
      if (at !== undefined) expect(minutes).toBeLessThanOrEqual(45)
  })
})
