import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { bedSizes, type BedSeen, drawBed } from '@/drawings/bed/bed.ts'
import { shapes, type Shape } from '@/drawings/shared/figure-contract.ts'
import { exampleOf, type Look, lookAt, standardLooks } from '@/find/battery.ts'
import { needleName, toBed, wholeBed } from '@/mechanism/bed.ts'
import type { FaultKindName } from '@/mechanism/fault-kinds.ts'
import { type Pass, startRun } from '@/mechanism/pass.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { describeBed } from '@/words/figures/bed.ts'
import { kinds, passes, scenarios } from '../mechanism/arbitraries.ts'
import { needlesBetween, ofNeedle } from '@/mechanism/indices.ts'
import { emptySheet, textsOf } from './redraw.ts'

const pattern = cardLibrary(cardsFolder).cards.get('harbour-star')!

const seen = ({ came, asked }: Pass, { first, last } = wholeBed): BedSeen => ({ came, asked, first, last })

const drawn = (bed: BedSeen, shape: Shape): SVGSVGElement => {
  const sheet = emptySheet()
  drawBed(sheet, bed, { shape })
  return sheet
}

/** How many needles the picture marks so: each begins a piece of its path. */
const marked = (sheet: SVGSVGElement, name: string, mark: string): number => {
  const path = sheet.querySelector(`.seen-lines .${name}[data-mark="${mark}"]`)?.getAttribute('d') ?? ''
  return (path.match(/M/g) ?? []).length
}

/** What the model says should be marked how, counted from its departures alone. */
const expected = ({ came, departures }: Pass, { first, last } = wholeBed): Record<string, number> => {
  const wrong = (outcome: string): number =>
    departures.filter((departure) => departure.came === outcome).length
  const all = (outcome: string): number =>
    needlesBetween(first, last).filter((needle) => ofNeedle(came, needle) === outcome).length
  return {
    plain: all('plain') - wrong('plain'),
    selected: all('selected') - wrong('selected'),
    missed: wrong('plain'),
    extra: wrong('selected'),
    unmoved: wrong('unmoved'),
  }
}

const expectMarks = (sheet: SVGSVGElement, pass: Pass, bed = wholeBed): void => {
  for (const [mark, count] of Object.entries(expected(pass, bed))) {
    expect(marked(sheet, 'seen-needles', mark), `${mark} needles`).toBe(count)
    if (/missed|extra|unmoved/.test(mark))
      expect(marked(sheet, 'seen-signs', mark), `${mark} signs`).toBe(count)
  }
}

const looksAt = (kind: FaultKindName): Pass[] =>
  standardLooks.map((look) => lookAt([exampleOf(kind)], look, pattern))

describe.each(shapes)('the bed from above, %s', (shape) => {
  test.each(kinds)('marks as many needles as the model says, %s', (kind) => {
    for (const pass of looksAt(kind)) expectMarks(drawn(seen(pass), shape), pass)
  })

  test('marks as many needles as the model says, whatever the machine', () => {
    fc.assert(
      fc.property(scenarios(), passes, (scenario, number) => {
        const pass = startRun(scenario).passOf(number)
        const sheet = drawn(seen(pass, scenario.bed), shape)
        expectMarks(sheet, pass, scenario.bed)
        expect(/NaN|undefined|Infinity|null|\de-\d/.exec(sheet.outerHTML)).toBeNull()
      }),
      { numRuns: 60 },
    )
  })

  test('is the same however it came to its state', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(scenarios(), passes), { minLength: 2, maxLength: 4 }), (states) => {
        const beds = states.map(([scenario, pass]) => seen(startRun(scenario).passOf(pass), scenario.bed))
        const sheet = emptySheet()
        for (const bed of beds) {
          drawBed(sheet, bed, { shape })
          expect(sheet.outerHTML).toBe(drawn(bed, shape).outerHTML)
        }
      }),
      { numRuns: 30 },
    )
  })

  test('stays within its own edges', () => {
    for (const kind of kinds)
      for (const text of drawn(seen(looksAt(kind)[0]!), shape).querySelectorAll('text')) {
        const x = Number(text.getAttribute('x'))
        expect(x).toBeGreaterThan(0)
        expect(x).toBeLessThan(bedSizes[shape].width - 5)
        expect(Number(text.getAttribute('y'))).toBeLessThan(bedSizes[shape].height)
      }
  })

  test('names the needles that are wrong where they stand apart, and the ends', () => {
    const pass = looksAt('strip.seized')[0]!
    const sheet = drawn(seen(pass), shape)
    expect(textsOf(sheet, '.seen-name[data-look="wrong"]')).toEqual(
      pass.departures.map(({ needle }) => needleName(needle)),
    )
    for (const name of ['L100', 'L1', 'R100']) expect(textsOf(sheet, '.seen-name')).toContain(name)
  })

  test('says in its legend how many needles carry each sign', () => {
    const pass = looksAt('card.reversed')[0]!
    const counts = expected(pass)
    expect(textsOf(drawn(seen(pass), shape), '.seen-meaning')).toEqual([
      `${counts['plain']} plain, as asked`,
      `${counts['selected']} selected, as asked`,
      `${counts['missed']} missed`,
      `${counts['extra']} selected, not asked for`,
    ])
  })
})

describe('the bed in words', () => {
  test('counts what the picture shows', () => {
    expect(describeBed(looksAt('strip.seized')[0]!, wholeBed)).toBe(
      'The bed from above, needles L100 to R100: 82 needles selected, 118 plain; every eighth needle, where the card asks for it: 17 missed.',
    )
  })
  test('says so where nothing is wrong, of the needles in use alone', () => {
    const bed = toBed({ first: 90, last: 109 })
    const run = startRun({ ...soundScenario(pattern), bed })
    expect(describeBed(run.passOf(1), bed)).toMatch(
      /^The bed from above, needles L10 to R10: \d+ needles selected, \d+ plain; every needle as the card asks\.$/,
    )
  })
})

/** Looks that show each sign, to be judged by eye. */
const pictures: Readonly<Record<string, readonly [FaultKindName, Look]>> = {
  seized: ['strip.seized', standardLooks[0]!],
  reversed: ['card.reversed', standardLooks[0]!],
  gone: ['needle.gone', standardLooks[0]!],
}

test.each(Object.entries(pictures))('the bed is drawn as reviewed, %s', async (name, [kind, look]) => {
  const svg = drawn(seen(lookAt([exampleOf(kind)], look, pattern)), 'wide')
  svg.setAttribute('xmlns', 'http://www.w3.org/2000/svg')
  const sheets = ['styles/tokens.css', 'drawings/bed/bed.css'].map(
    (sheet) => `<?xml-stylesheet type="text/css" href="../../../src/${sheet}"?>`,
  )
  await expect(`${sheets.join('\n')}\n${svg.outerHTML.replaceAll('><', '>\n<')}\n`).toMatchFileSnapshot(
    `../golden/figures/bed-${name}.svg`,
  )
})
