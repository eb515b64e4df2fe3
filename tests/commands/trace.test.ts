import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { closeSync, existsSync, openSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { trace as traceCommand } from '@/commands/trace.ts'
import { npmRun, patience } from './npm-run.ts'
import { runHere } from './run-here.ts'

interface TraceDocument {
  state: string
  passes: { pass: number; way: string; row: number | null; needles: string }[]
  departures: { pass: number; needle: string; asked: string; came: string; stage: string; part: string }[]
}

/** The document of a text that is read with nothing to say. */
const trace = async (text: string): Promise<TraceDocument> => {
  const { code, out, said } = await runHere(traceCommand, [text])
  expect({ code, said }).toEqual({ code: 0, said: '' })
  return JSON.parse(out) as TraceDocument
}

/** A needle's name by its index from the left, 0 to 199. */
const name = (index: number): string => (index < 100 ? `L${100 - index}` : `R${index - 99}`)

/** Needles of strip 3: columns 3, 11 and 19, as R3 (index 102) and every eighth from it. */
const ofStrip3 = Array.from({ length: 200 }, (_, index) => index).filter((index) => index % 8 === 102 % 8)

describe('the trace of a link', () => {
  test.each([60, 160, 250])(
    'of a bed of %d needles has a letter for each, and its own names',
    async (length) => {
      const text = `card=x.____&break=strip.3.seized&own=1_bed-${length}`
      const { state, passes, departures } = await trace(text)
      const names = Array.from({ length }, (_, n) =>
        n < length / 2 ? `L${length / 2 - n}` : `R${n - length / 2 + 1}`,
      )
      // R3 is of strip 3 on every bed, and so is every eighth from it.
      const missed = names.filter((_, n) => (n - (length / 2 + 2)) % 8 === 0)
      expect(state).toBe(text)
      expect(passes[0]?.needles).toBe(names.map((each) => (missed.includes(each) ? 'p' : 's')).join(''))
      expect(departures.map(({ needle }) => needle)).toEqual(missed)
    },
  )

  test('of one row of holes with strip 3 seized misses 25 needles in each of three passes', async () => {
    const needles = Array.from({ length: 200 }, (_, n) => (ofStrip3.includes(n) ? 'p' : 's')).join('')
    expect(ofStrip3).toHaveLength(25)
    expect(await trace('card=x.____&pass=3&break=strip.3.seized')).toEqual({
      state: 'card=x.____&pass=3&break=strip.3.seized',
      passes: [
        { pass: 1, way: 'right', row: 1, needles },
        { pass: 2, way: 'left', row: 1, needles },
        { pass: 3, way: 'right', row: 1, needles },
      ],
      departures: [1, 2, 3].flatMap((pass) =>
        ofStrip3.map((index) => ({
          pass,
          needle: name(index),
          asked: 'selected',
          came: 'plain',
          stage: 'strip',
          part: 'strip.3',
        })),
      ),
    })
  })

  test('holds only the needles in use, from left to right, and the row of each pass', async () => {
    const every24th = `s${'p'.repeat(23)}`
    const shifted = `${'p'.repeat(23)}s`
    expect(await trace('card=x.gAAAAAAB&pass=3&needles=L24-R24')).toEqual({
      state: 'card=x.gAAAAAAB&pass=3&needles=L24-R24',
      passes: [
        { pass: 1, way: 'right', row: 1, needles: every24th + every24th },
        { pass: 2, way: 'left', row: 2, needles: shifted + shifted },
        { pass: 3, way: 'right', row: 1, needles: every24th + every24th },
      ],
      departures: [],
    })
  })

  test('goes by the needle of column 1, and has it in its state as it is among R1 to R24', async () => {
    const { state, passes, departures } = await trace(
      'card=x.gAAA&needles=L3-R3&first=L23&break=strip.1.seized',
    )
    expect(state).toBe('card=x.gAAA&break=strip.1.seized&needles=L3-R3&first=R2')
    expect(passes).toEqual([{ pass: 1, way: 'right', row: 1, needles: 'pppppp' }])
    expect(departures).toEqual([
      { pass: 1, needle: 'R2', asked: 'selected', came: 'plain', stage: 'strip', part: 'strip.1' },
    ])
  })

  test('calls a needle without a butt unmoved', async () => {
    const { passes, departures } = await trace('card=x.____&needles=L3-R3&break=needle.R1.gone')
    expect(passes).toEqual([{ pass: 1, way: 'right', row: 1, needles: 'sssuss' }])
    expect(departures).toEqual([
      { pass: 1, needle: 'R1', asked: 'selected', came: 'unmoved', stage: 'hold', part: 'needle.R1' },
    ])
  })

  test('selects every needle without a card, and reads no row', async () => {
    expect(await trace('card=none')).toEqual({
      state: 'card=none',
      passes: [{ pass: 1, way: 'right', row: null, needles: 's'.repeat(200) }],
      departures: [],
    })
  })

  test('of an empty text is that of the main card, whose first row asks for needles of strip 3', async () => {
    const { state, passes, departures } = await trace('')
    expect(state).toBe('')
    expect(passes).toHaveLength(1)
    expect(passes[0]?.needles).toMatch(/^[sp]{200}$/)
    expect(ofStrip3.map((index) => passes[0]?.needles[index]).join('')).toBe('s'.repeat(25))
    expect(departures).toEqual([])
  })

  test('runs each pass whole, wherever the carriage stands', async () => {
    const { passes } = await trace('pass=2')
    const half = await trace('pass=2&at=R1')
    expect(half.state).toBe('pass=2&at=R1')
    expect(half.passes).toEqual(passes)
  })

  test('gives the state in its canonical form', async () => {
    const { state } = await trace('#seed=3&break=strip.3.over&v=1&break=pin.2.low&pass=2')
    expect(state).toBe('pass=2&break=pin.2.low&break=strip.3.over&seed=3')
  })

  test('is the same for a whole address of a page', async () => {
    const text = 'pass=2&break=strip.3.seized'
    for (const address of [`https://example.org/workbench/?beside=fabric#${text}`, `localhost:4321/#${text}`])
      expect(await trace(address)).toEqual(await trace(text))
  })

  test('of 9999 passes is not cut short', { timeout: patience }, async () => {
    const { passes, departures } = await trace('pass=9999&break=strip.3.seized&wear=0.5')
    expect(passes.map(({ pass }) => pass)).toEqual(Array.from({ length: 9999 }, (_, n) => n + 1))
    expect(departures.at(-1)?.pass).toBe(9999)
    expect(departures.length).toBeGreaterThan(9999)
  })
})

describe('a text with numbers out of range or contradictions', () => {
  test.each([
    ['pass=0', '', ['For “pass” the link has 0, outside 1 to 9999; 1 is used.']],
    [
      'wear=7&break=strip.3.seized&break=strip.3.over',
      'break=strip.3.over&wear=1',
      [
        "“strip.3.seized” and “strip.3.over” can't both be so; the later, “strip.3.over”, counts.",
        'For “wear” the link has 7, outside 0 to 1; 1 is used.',
      ],
    ],
  ])('is traced as it was changed, and each change is said on a line: %s', async (text, state, lines) => {
    const { code, out, said } = await runHere(traceCommand, [text])
    expect(code).toBe(0)
    expect((JSON.parse(out) as TraceDocument).state).toBe(state)
    expect(said.trimEnd().split('\n').sort()).toEqual(lines.sort())
  })
})

describe('bad input', () => {
  test.each([
    ['colour=red', "This site doesn't know “colour”."],
    ['card=gone', 'There is no card “gone” here.'],
    ['pass=two', 'For “pass” the link has “two”, which is no whole number.'],
    ['speed=fast', 'For “speed” the link has “fast”, which is no number.'],
    ['needles=R9-L9', '“R9-L9” names no needles from left to right such as L24-R24.'],
    ['at=middle', '“middle” is no place for the carriage.'],
    ['https://example.org/workbench/#pass=two', 'For “pass” the link has “two”, which is no whole number.'],
    [
      'https://example.org/workbench/',
      'The address “https://example.org/workbench/” has nothing after a “#”, so it says nothing about a machine.',
    ],
    [
      'break=strip.9.over',
      "The fault “strip.9.over” can't be read: there is no strip 9; they run from 1 to 8.",
    ],
    ['break=%0Astrip%1B', "The fault “·strip·” can't be read: no such fault is known."],
    ['v=2', 'The link is of version “2”, which is not known here.'],
    ['pass=0&colour=red&wear=x', "This site doesn't know “colour”. (And 1 more.)"],
  ])('ends with 2, nothing on standard output and one line of why: %s', async (text, why) => {
    expect(await runHere(traceCommand, [text])).toEqual({ code: 2, out: '', said: `${why}\n` })
  })

  test.each([[[]], [['pass=1', 'pass=2']]])(
    'is also any other number of texts than one: %j',
    async (texts) => {
      const { code, out, said } = await runHere(traceCommand, texts)
      expect({ code, out }).toEqual({ code: 2, out: '' })
      expect(said).toMatch(/^Give the text of one link, as in: npm run --silent trace -- '.+'\n$/)
    },
  )
})

describe('npm’s own run', { timeout: patience }, () => {
  test.each([
    ['writes the document and ends with 0', 'card=x.____&pass=3&break=strip.3.seized', 0],
    ['says what was changed and ends with 0', 'pass=0', 0],
    ['says what can’t be read and ends with 2', 'colour=red', 2],
  ])('%s', async (_, text, code) => {
    const ended = await npmRun('trace', text)
    expect(ended.code).toBe(code)
    expect(ended).toEqual(await runHere(traceCommand, [text]))
  })

  test('writes a long document whole', async () => {
    const text = 'pass=9999&break=strip.3.seized'
    const { code, out, said } = await npmRun('trace', text)
    expect({ code, said }).toEqual({ code: 0, said: '' })
    expect(out === (await runHere(traceCommand, [text])).out).toBe(true)
  })

  test.runIf(existsSync('/dev/full'))(
    'says in a sentence that the disk is full, and ends with 1',
    async () => {
      const file = fileURLToPath(new URL('../../src/commands/trace.ts', import.meta.url))
      const full = openSync('/dev/full', 'w')
      const child = spawn(process.execPath, [file, 'pass=2'], { stdio: ['ignore', full, 'pipe'] })
      closeSync(full)
      let said = ''
      child.stderr?.setEncoding('utf8').on('data', (data: string) => (said += data))
      expect(await once(child, 'close')).toEqual([1, null])
      expect(said).toBe('The output could not be written: the disk is full.\n')
    },
  )

  test('ends without a word where its reader has seen enough', async () => {
    const file = fileURLToPath(new URL('../../src/commands/trace.ts', import.meta.url))
    const child = spawn(process.execPath, [file, 'pass=9999'], { stdio: ['ignore', 'pipe', 'pipe'] })
    let said = ''
    child.stderr.on('data', (data: Buffer) => (said += data.toString()))
    await once(child.stdout, 'data')
    child.stdout.destroy()
    expect(await once(child, 'close')).toEqual([0, null])
    expect(said).toBe('')
  })
})
