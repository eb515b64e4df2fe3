import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { outlineOf } from '@/site/chapter-outline.ts'
import { facts } from '@/words/facts.ts'

const step = (text: string): string =>
  `---\ntitle: A {title}\n---\n\n<Step id="one" title="One" figure="chain" state="at=R3&break=strip.3.seized">\n\n${text}\n\n</Step>\n`
const note = '<Notes>\n\nAsk <N of="strips" words /> of them.\n\n</Notes>'

describe('the outline of a chapter', () => {
  test('has each step with its figure, its state, and its text as it reads', () => {
    const text =
      'A <Term id="pin">feeler *pin*</Term>, <N of="pin" /> wide.<Source id="trade" />\n\n- One\n- <Go state="at=R3">two</Go>\n  more'
    expect(outlineOf(step(text)).steps).toEqual([
      {
        id: 'one',
        title: 'One',
        figure: 'chain',
        scene: {},
        state: 'at=R3&break=strip.3.seized',
        words: `A feeler pin, ${facts.pin.replace('\u00a0', ' ')} wide. One two more`,
        predictions: [],
        notes: [],
      },
    ])
  })
  test('has each prediction with what it asks', () => {
    const text =
      '<Predict of="choice" options={["Yes", "No"]} right={0} state="at=R9" ask="Will it?">\n\nIt will.\n\n</Predict>'
    const [first] = outlineOf(step(text)).steps
    expect(first?.words).toBe('It will.')
    expect(first?.predictions.map(({ attributes }) => Object.fromEntries(attributes))).toEqual([
      { of: 'choice', options: '["Yes", "No"]', right: '0', state: 'at=R9', ask: 'Will it?' },
    ])
  })
  test('keeps notes to the teacher out of what readers have, and out of the time to read it', () => {
    const [first] = outlineOf(step(`Look.\n\n${note}`)).steps
    expect(first?.words).toBe('Look.')
    expect(first?.notes).toEqual(['Ask eight of them.'])
    const text = 'word '.repeat(500)
    expect(outlineOf(`${text}<Notes>${text}</Notes>`).minutes).toBe(outlineOf(text).minutes)
    expect(outlineOf(text).minutes).toBe(3)
  })
  test('can’t be had of a step that lacks its state, or of a number that the model lacks', () => {
    expect(() => outlineOf('<Step id="one" title="One" figure="chain">A</Step>')).toThrow('lacks its “state”')
    expect(() => outlineOf('<N of="colums" />')).toThrow('no fact “colums”')
  })
})

const folder = fileURLToPath(new URL('../../content/chapters/', import.meta.url))
const chapters = readdirSync(folder).map((name) => [name, readFileSync(`${folder}${name}`, 'utf8')] as const)

describe.each(chapters)('%s', (_, text) => {
  const { steps } = outlineOf(text)
  test.each(steps.map(({ id, notes }) => [id, notes] as const))('has notes at %s', (_, notes) => {
    expect(notes).toHaveLength(1)
    const [words = ''] = notes
    const sentences = words.match(/[.?:](?=\s|$)/g) ?? []
    expect(sentences.length).toBeGreaterThanOrEqual(1)
    expect(words.split(/\s+/).length).toBeLessThanOrEqual(70)
  })
})

test.each(chapters)('%s names every figure that it shows', (_, text) => {
  const [, list = ''] = /^figures: \[(.*)\]$/m.exec(text) ?? []
  const shown = outlineOf(text).components.flatMap(({ attributes }) => attributes.get('figure') ?? [])
  expect(shown.filter((figure) => !list.split(', ').includes(figure))).toEqual([])
})
