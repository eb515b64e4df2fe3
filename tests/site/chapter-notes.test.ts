import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { withoutNotes } from '../../src/site/chapter-notes.ts'
import { minutesOf } from '../../src/site/reading-time.ts'
import { stepTags } from '../../src/site/chapter-steps.ts'

const step = (text: string): string =>
  `<Step id="one" title="One" figure="chain" state="at=R3">\n${text}</Step>\n`
const note = '\n<Notes>\n\nAsk <N of="strips" words /> of them.\n\n</Notes>\n'

describe('notes to the teacher', () => {
  test('are no part of what a chapter’s readers have', () => {
    expect(withoutNotes(step(`Look.\n${note}`))).toBe(step('Look.\n\n\n'))
    expect(stepTags(step(`Look.\n${note}`))[0]?.text.trim()).toBe('Look.')
  })
  test('take no time to read', () => {
    const text = 'word '.repeat(500)
    expect(minutesOf(`${text}<Notes>${text}</Notes>`)).toBe(minutesOf(text))
  })
})

const folder = fileURLToPath(new URL('../../content/chapters/', import.meta.url))
const chapters = readdirSync(folder).map((name) => [name, readFileSync(`${folder}${name}`, 'utf8')] as const)

describe.each(chapters)('%s', (_, text) => {
  const steps = [...text.matchAll(/<Step\s+id="([^"]*)"[\s\S]*?<\/Step>/g)]
  test.each(steps.map(([whole, id]) => [id, whole] as const))('has notes at %s', (_, whole) => {
    const notes = [...whole.matchAll(/<Notes>\n\n([\s\S]*?)\n\n<\/Notes>/g)].map(([, words = '']) => words)
    expect(notes).toHaveLength(1)
    const sentences = (notes[0] ?? '').match(/[.?:](?=\s|$)/g) ?? []
    expect(sentences.length).toBeGreaterThanOrEqual(1)
    expect((notes[0] ?? '').replace(/<[^>]*>/g, 'one').split(/\s+/).length).toBeLessThanOrEqual(70)
  })
})
