import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { find as findCommand } from '@/commands/find.ts'
import { npmRun, npmRunFrom, patience } from './npm-run.ts'
import { runHere } from './run-here.ts'

interface FindDocument {
  places: {
    place: string
    wrong: number
    before: number | null
    ways: { fault: string; probability: number }[]
  }[]
  unexplained: { row: number | null; way: string; needle: string; chance: number }[]
  ranked: { faults: string[]; probability: number; why: string }[]
  next: { check: string; bits: number; minutes: number; opens: boolean }[]
}

const folder = mkdtempSync(join(tmpdir(), 'find-'))
afterAll(() => rmSync(folder, { recursive: true }))

let files = 0
const fileWith = (text: string): string => {
  const file = join(folder, `${files++}.json`)
  writeFileSync(file, text)
  return file
}
const findText = (text: string) => runHere(findCommand, [fileWith(text)])

const find = async (file: unknown): Promise<FindDocument> => {
  const { code, out, said } = await findText(JSON.stringify(file))
  expect({ code, said }).toEqual({ code: 0, said: '' })
  return JSON.parse(out) as FindDocument
}

/** Needles of a bed, a letter each by its index from the left. */
const bed = (letter: (index: number) => string): string =>
  Array.from({ length: 200 }, (_, index) => letter(index)).join('')

/** Needles of strip 3: R3 is index 102, and every eighth from it. */
const isOfStrip3 = (index: number): boolean => index % 8 === 102 % 8

const pass = (needles: string, more: object = {}) => ({ row: 1, way: 'right', speed: 500, needles, ...more })
const every = bed(() => 's')
const good = { card: 'x.____', passes: [pass(every)] }

describe('what may be wrong', { timeout: patience }, () => {
  test('is strip 3 where every eighth needle from R3 stays plain', async () => {
    const { ranked, next, places } = await find({
      card: 'x.____',
      passes: [pass(bed((index) => (isOfStrip3(index) ? 'p' : 's')))],
    })
    const [first, second] = places
    expect([first!.place, first!.ways[0]!.fault]).toEqual(['strip.3', 'strip.3.seized'])
    expect(first!.wrong).toBeGreaterThan(0.95)
    expect(second!.wrong).toBeLessThan(0.5)
    expect(ranked[0]!.faults).toEqual(['strip.3.seized'])
    expect(ranked[0]!.why).toBe('It explains all of the 25 needles that came out wrong, and nothing else.')
    expect(next.some(({ check }) => check.startsWith('Press each strip'))).toBe(true)
  })

  test('is nothing on a sound bed, and the probabilities add up to 1', async () => {
    const { ranked, next } = await find({
      card: 'x.____AAAA',
      passes: [
        pass(every),
        pass(
          bed(() => 'p'),
          { row: 2, way: 'left' },
        ),
      ],
    })
    expect(ranked[0]!.faults).toEqual([])
    expect(ranked.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 12)
    for (const one of ranked) expect(Object.keys(one)).toEqual(['faults', 'probability', 'why'])
    expect(next.length).toBeGreaterThan(3)
    for (const one of next) expect(Object.keys(one)).toEqual(['check', 'bits', 'minutes', 'opens'])
  })

  test('names together what can’t be told apart, two at once with a plus', async () => {
    const isOfColumn5 = (index: number) => index % 24 === 104 % 24
    const { ranked } = await find({
      card: 'x.____AAAA',
      passes: [
        pass(bed((index) => (isOfStrip3(index) || isOfColumn5(index) ? 'p' : 's'))),
        pass(
          bed(() => 'p'),
          { row: 2, way: 'left' },
        ),
        pass(
          bed((index) => (isOfStrip3(index) || isOfColumn5(index) ? 'p' : 's')),
          { row: 1, way: 'right' },
        ),
      ],
    })
    expect([...ranked[0]!.faults].sort()).toEqual([
      'pin.5.low + strip.3.seized',
      'rocker.5.dead + strip.3.seized',
    ])
  })

  test('lists last what opens the machine, and never counts a needle not looked at', async () => {
    const { places, next } = await find({
      card: 'x.____',
      passes: [pass(bed((index) => (index === 102 ? 'p' : index === 103 ? 's' : '?')))],
    })
    for (const name of ['strip.3', 'column.3', 'needle.R3']) {
      const { wrong, before } = places.find(({ place }) => place === name)!
      expect(wrong).toBeGreaterThan(1.5 * before!)
    }
    // A needle not looked at is as likely to be wrong as before.
    for (const { place, wrong, before } of places)
      if (/^needle\.(?!R[34]$)/.test(place)) expect(wrong).toBeCloseTo(before!, 3)
    const opens = next.map((check) => check.opens)
    expect(opens.indexOf(true)).toBeGreaterThan(0)
    expect(opens).toEqual([...opens].sort())
    expect(next.at(-1)!.check).toMatch(/card reader off/)
  })

  test('is no machine of those listed, for the rest of the chance', async () => {
    const { ranked } = await find(good)
    expect(ranked).toHaveLength(21)
    expect(ranked.at(-1)).toMatchObject({ faults: ['other'] })
    expect(ranked.slice(0, -1).every(({ faults }) => faults[0] !== 'other')).toBe(true)
  })

  test('has each note that a slip of the pen explains best, by row, way and needle', async () => {
    const again = { row: 2, way: 'left' }
    const one = bed((index) => (index === 111 ? 'p' : 's'))
    const none = bed(() => 'p')
    const { unexplained, ranked } = await find({
      card: 'x.____AAAA',
      passes: [
        pass(one),
        pass(none, again),
        pass(every, { speed: 900 }),
        pass(none, { ...again, speed: 900 }),
      ],
    })
    expect(unexplained).toEqual([
      { row: 1, way: 'right', needle: 'R12', chance: expect.any(Number) as number },
    ])
    expect(ranked[0]).toMatchObject({
      faults: [],
      why: expect.stringMatching(/^Then 1 of the 800 needles/) as string,
    })
  })

  test('is read by npm’s own run from a file named from where its reader is', async () => {
    writeFileSync(join(folder, 'seen.json'), JSON.stringify(good))
    const ended = await npmRunFrom(folder, 'find', 'seen.json')
    expect(ended).toEqual(await runHere(findCommand, ['seen.json'], folder))
    expect({ code: ended.code, said: ended.said }).toEqual({ code: 0, said: '' })
    expect((JSON.parse(ended.out) as FindDocument).ranked[0]!.faults).toEqual([])
  })

  test('may be asked about a machine with dimensions of its own, by as many letters as it has needles', async () => {
    const needles = `${'s'.repeat(59)}u`
    const own = '1_bed-60_pitch-5'
    const { places } = await find({ ...good, own, passes: [pass(needles), pass(needles, { speed: 900 })] })
    expect(places[0]!.place).toBe('needle.R30')
    const other = await find({ ...good, own: '1_buttReturn-9', passes: [pass(every, { speed: 900 })] })
    expect(other.ranked[0]!.faults).toEqual([])
  })

  test('may be asked about the site’s own cards, and about no card', async () => {
    expect((await find({ card: 'all-holes', passes: [pass(every)] })).ranked[0]!.faults).toEqual([])
    const { row, ...without } = pass(every)
    expect(row).toBe(1)
    expect((await find({ card: 'none', passes: [without] })).ranked[0]!.faults).toEqual([])
  })
})

describe('bad input', { timeout: patience }, () => {
  test.each([
    [[1], 'The file should be an object with card, passes, but is a list.'],
    [{ passes: [] }, 'The file has no “card”.'],
    [{ ...good, colour: 1 }, 'The file has “colour”, which is not known here.'],
    [{ ...good, own: 5 }, '“own” should be a text such as 1_pitch-5, but is 5.'],
    [
      { ...good, own: '1_pitch-99' },
      "“own” can't be taken as it is. For the dimension pitch the link has 99, outside 3 to 10.",
    ],
    [
      { ...good, own: '1_warp-3' },
      "“own” can't be taken as it is. “warp-3” names no dimension that can be measured.",
    ],
    [
      { ...good, own: '7_pitch-5' },
      "“own” can't be taken as it is. The measured values “7_pitch-5” are of a form that is not known here.",
    ],
    [{ ...good, own: '1_bed-60' }, 'Pass 1 has 200 needles; it needs 60, one letter each, L30 first.'],
    [{ ...good, card: 'gone' }, 'There is no card “gone” here.'],
    [{ ...good, card: 'x.__' }, "The card can't be read: it has no whole row of 24 columns."],
    [{ ...good, card: 'x._____' }, /^The card can't be read whole: row 2 is not 24 columns wide/],
    [{ ...good, passes: [] }, '“passes” has 0 passes; it needs 1 to 31.'],
    [{ ...good, passes: {} }, '“passes” should be a list, but is an object.'],
    [
      { ...good, passes: [pass(every), 4] },
      /^Pass 2 should be an object with row, way, speed, needles, but is 4\.\n$/,
    ],
    [
      { ...good, passes: [pass(every), pass(every, { way: 'left', pass: 3 })] },
      'Pass 2 is pass 3 and goes to the left; odd passes go to the right, even ones to the left.',
    ],
    [{ ...good, passes: [pass(every, { pass: 0 })] }, 'Pass 1 has pass 0; passes run from 1 to 9999.'],
    [{ ...good, passes: [pass(every, { pass: 1.5 })] }, 'Pass 1 has pass 1.5; passes run from 1 to 9999.'],
    [{ ...good, passes: [pass(every, { pass: null })] }, 'Pass 1 has pass null; passes run from 1 to 9999.'],
    [{ ...good, passes: [pass(every, { card: 7 })] }, "Pass 1's card should be a text, but is 7."],
    [{ ...good, passes: [pass(every, { card: 'gone' })] }, 'There is no card “gone” here.'],
    [
      { ...good, passes: [pass(every), pass(every, { card: 'x.__' })] },
      "Pass 2's card can't be read: it has no whole row of 24 columns.",
    ],
    [
      { ...good, passes: [pass(every, { card: 'x.AAAAAAAA', row: 3 })] },
      "Pass 1 has row 3; the card's rows run from 1 to 2.",
    ],
    [{ ...good, passes: [pass(every, { card: 'none' })] }, 'Pass 1 has row 1, but there is no card.'],
    [{ ...good, passes: [pass(every, { row: 2 })] }, "Pass 1 has row 2; the card's rows run from 1 to 1."],
    [
      { ...good, passes: [pass(every, { row: 1.5 })] },
      "Pass 1 has row 1.5; the card's rows run from 1 to 1.",
    ],
    [{ ...good, card: 'none' }, 'Pass 1 has row 1, but there is no card.'],
    [{ ...good, passes: [pass(every, { way: 'up' })] }, 'Pass 1 has way “up”; it is “right” or “left”.'],
    [
      { ...good, passes: [pass(every, { speed: 49 })] },
      'Pass 1 has speed 49; speeds run from 50 to 2000 mm/s.',
    ],
    [{ ...good, passes: [pass(every, { speed: '500' })] }, /^Pass 1 has speed “500”; speeds/],
    [
      { ...good, passes: [pass(every.slice(1))] },
      'Pass 1 has 199 needles; it needs 200, one letter each, L100 first.',
    ],
    [{ ...good, passes: [pass(every), pass(`${every}s`)] }, /^Pass 2 has 201 needles/],
    [
      { ...good, passes: [pass(every.replace(/^s{102}s/, `${'s'.repeat(102)}x`))] },
      'Pass 1 has “x” at needle R3; each is s, p, u or ?.',
    ],
  ])('ends with 2, nothing on standard output and one line of why: %j', async (file, why) => {
    const { code, out, said } = await findText(JSON.stringify(file))
    expect({ code, out }).toEqual({ code: 2, out: '' })
    expect(said.trimEnd().split('\n')).toHaveLength(1)
    const reason = said.replace(/^Line 1: /, '')
    expect(reason).not.toBe(said)
    if (typeof why === 'string') expect(reason).toBe(`${why}\n`)
    else expect(reason).toMatch(why)
  })

  test('names the line of what is wrong, and a name that is there twice', async () => {
    const lines = JSON.stringify({ ...good, passes: [pass(every), pass(every, { row: 9 })] }, null, 2).split(
      '\n',
    )
    const at = lines.findIndex((line) => line.includes('"row": 9')) + 1
    const said = async (text: string) => (await findText(text)).said
    expect(await said(lines.join('\n'))).toBe(
      `Line ${at}: Pass 2 has row 9; the card's rows run from 1 to 1.\n`,
    )
    const stray = lines.map((line, n) => (n === at - 1 ? '"row": 1, "colour":\n"red",' : line))
    expect(await said(stray.join('\n'))).toBe(
      `Line ${at + 1}: Pass 2 has “colour”, which is not known here.\n`,
    )
    const missing = lines.filter((_, n) => n !== at - 1)
    expect(await said(missing.join('\n'))).toBe(`Line ${at - 1}: Pass 2 has no “row”.\n`)
    const wrong = lines.map((line, n) => (n === at - 1 ? '"row": 1,\n"pass": 2,' : line))
    expect(await said(wrong.join('\n'))).toMatch(new RegExp(`^Line ${at + 1}: Pass 2 is pass 2`))
    const twice = lines.flatMap((line, n) => (n === at - 1 ? ['"row": 1,', '"row": 1,'] : [line]))
    expect(await said(twice.join('\r\n'))).toBe(`Line ${at + 1}: “row” is there twice.\n`)
    expect(await said(' \n')).toBe('The file is empty.\n')
  })

  test('names what is wrong first, and only that', async () => {
    const bad = { card: 'x.____', passes: [pass(every), { way: 'up', speed: 1 }, 7] }
    expect((await findText(JSON.stringify(bad))).said).toBe('Line 1: Pass 2 has no “row”.\n')
  })

  test('begins no file: a mark in front of the text is no part of it', async () => {
    expect((await findText(`\uFEFF${JSON.stringify(good)}`)).code).toBe(0)
    expect((await findText('\uFEFF')).said).toBe('The file is empty.\n')
  })

  test('is also no JSON', async () => {
    const lines = JSON.stringify(good, null, 2).split('\n')
    lines[4] = '      "row": one,'
    expect(await findText(lines.join('\n'))).toEqual({
      code: 2,
      out: '',
      said: 'Line 5 is not JSON as it should be.\n',
    })
  })

  const locked = join(folder, 'locked.json')
  test.each<[string, string]>([
    [join(folder, 'none', 'such.json'), ': there is no such file'],
    [join(fileWith('{}'), 'within.json'), ': there is no such file'],
    [folder, ': it is a folder'],
    ['a\0b', ''],
    // Root may read whatever it likes.
    ...(process.getuid?.() === 0
      ? []
      : [[locked, ': its permissions do not allow it'] satisfies [string, string]]),
  ])('is also a file that can’t be read: %s', async (name, why) => {
    writeFileSync(locked, '{}')
    chmodSync(locked, 0)
    const { code, out, said } = await runHere(findCommand, [name], folder)
    expect({ code, out }).toEqual({ code: 2, out: '' })
    expect(said).toMatch(/^The file “.+” can't be read.*\.\n$/)
    expect(said.endsWith(`can't be read${why}.\n`)).toBe(true)
    chmodSync(locked, 0o600)
    rmSync(locked)
  })

  test.each([[[]], [['a', 'b']]])('is also any other number of files than one: %j', async (names) => {
    expect(await runHere(findCommand, names)).toEqual({
      code: 2,
      out: '',
      said: 'Give the name of one file, as in: npm run --silent find -- seen.json\n',
    })
  })

  test('ends npm’s own run with 2 and the one line', async () => {
    expect(await npmRun('find', folder)).toEqual(await runHere(findCommand, [folder]))
    const file = fileWith('{')
    expect(await npmRun('find', file)).toEqual({
      code: 2,
      out: '',
      said: 'Line 1 is not JSON as it should be.\n',
    })
  })
})
