import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { outlineOf } from '@/site/chapter-outline.ts'
import { goldenSteps } from '../golden/steps.ts'

const folder = 'content/chapters/'

/** Every chapter's steps: their own names, and those of the steps whose place they took. */
const named = new Map(
  readdirSync(folder).map((file) => {
    const { components } = outlineOf(readFileSync(folder + file, 'utf8'))
    const steps = components.filter(({ name }) => name === 'Step').map(({ attributes }) => attributes)
    const own = steps.flatMap((attributes) => attributes.get('id') ?? [])
    const former = steps.flatMap((attributes) => attributes.get('was')?.split(' ') ?? [])
    return [file.replace(/^\d+-|\.mdx$/g, ''), [...own, ...former]] as const
  }),
)

describe.each(Object.entries(goldenSteps))('of the addresses given out for %s', (chapter, steps) => {
  test.each(steps)('%s leads to its step, or to the one that took its place', (step) => {
    expect(named.get(chapter)?.filter((name) => name === step)).toEqual([step])
  })
})

test('every address that a step has is among those given out', () => {
  for (const [chapter, names] of named)
    expect(names.filter((name) => !goldenSteps[chapter]?.includes(name))).toEqual([])
})

test('no chapter has two steps of one name', () => {
  for (const names of named.values()) expect(new Set(names).size).toBe(names.length)
})
