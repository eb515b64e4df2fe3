import { expect } from 'vitest'
import { columnOfNeedle, needleIndex, stripOfNeedle } from '@/mechanism/bed.ts'
import { askedRow, type Stitch } from '@/mechanism/fabric.ts'
import { type Needle, needlesBetween, ofNeedle, toNeedle } from '@/mechanism/indices.ts'
import type { Run } from '@/mechanism/pass.ts'
import type { Sample } from '@/mechanism/sample.ts'
import { count } from '../mechanism/make.ts'

/** A fabric to hold sentences against: its rows over the needles in use, and nothing else. */
interface Cloth {
  readonly run: Run
  readonly needles: readonly Needle[]
  readonly rows: readonly { readonly knitted: readonly Stitch[]; readonly asked: readonly Stitch[] }[]
}

type Wrongness = (knitted: Stitch | undefined, asked: Stitch | undefined) => boolean

const isWrong: Wrongness = (knitted, asked) => knitted !== asked

const wrongOf = ({ needles, rows }: Cloth, is: Wrongness = isWrong): Needle[] =>
  needles.filter((needle) =>
    rows.some(({ knitted, asked }) => is(ofNeedle(knitted, needle), ofNeedle(asked, needle))),
  )

const isAll = ({ needles }: Cloth, row: readonly Stitch[], stitch: Stitch): boolean =>
  needles.every((needle) => ofNeedle(row, needle) === stitch)

const wrongRows = (cloth: Cloth): Cloth['rows'] =>
  cloth.rows.filter(({ knitted, asked }) =>
    cloth.needles.some((needle) => ofNeedle(knitted, needle) !== ofNeedle(asked, needle)),
  )

/**
 * That a customer may hear this of the whole pattern: each column of the card is in the bed, and no two strips, nor
 * what works them, explain it as well.
 */
const expectEvidence = (cloth: Cloth): void => {
  const { condition } = cloth.run
  expect(new Set(cloth.needles.map((needle) => columnOfNeedle(needle, condition))).size).toBe(24)
  expect(new Set(wrongOf(cloth).map((needle) => stripOfNeedle(needle, condition))).size).toBeGreaterThan(2)
}

/** That each stitch is the asked one of the column that `from` names. */
const expectColumns = (cloth: Cloth, from: (column: number) => number): void => {
  const columnOf = (needle: Needle): number => columnOfNeedle(needle, cloth.run.condition)
  const needleOf = new Map(cloth.needles.map((needle) => [columnOf(needle), needle]))
  for (const { knitted, asked } of cloth.rows)
    for (const needle of cloth.needles) {
      const column = ((from(columnOf(needle)) - 1 + 48) % 24) + 1
      expect(ofNeedle(knitted, needle)).toBe(ofNeedle(asked, needleOf.get(column)!))
    }
}

const rowText = (cloth: Cloth, row: readonly Stitch[]): string =>
  cloth.needles.map((needle) => ofNeedle(row, needle)).join()

const expectCardRows = (cloth: Cloth): void => {
  const repeat = cloth.run.condition.card?.length ?? 0
  const known = new Set(count(2, 1 + repeat).map((pass) => rowText(cloth, askedRow(cloth.run, pass))))
  for (const { knitted } of wrongRows(cloth)) expect(known).toContain(rowText(cloth, knitted))
}

const expectRowCount = (cloth: Cloth, wrong: string | undefined, all: string | undefined): void => {
  expect([wrongRows(cloth).length, cloth.rows.length]).toEqual([Number(wrong), Number(all)])
}

/** The needles that a phrase names; null where it names only the first and the last. */
const namedNeedles = (
  phrase: string,
): { all: Needle[] | null; first: number; last: number; step: number } => {
  const names = (phrase.match(/[LR]\d+/g) ?? []).map((name) => needleIndex(name, 250)!)
  const [first = -1, last = first] = [names[0], names.at(-1)]
  const step = [
    [/^every needle from /, 1],
    [/^every twenty-fourth needle, from /, 24],
    [/^every eighth needle, from /, 8],
  ] as const
  const found = step.find(([words]) => words.test(phrase))
  if (found)
    return {
      all: needlesBetween(toNeedle(first), toNeedle(last)).filter((n) => (n - first) % found[1] === 0),
      first,
      last,
      step: found[1],
    }
  if (/^needles here and there, from /.test(phrase)) return { all: null, first, last, step: 0 }
  expect(phrase).toMatch(/^needles? [LR]\d+(, [LR]\d+)*( and [LR]\d+)?$/)
  return { all: names, first, last, step: 0 }
}

/** What may be wrong with the stitches of some needles. */
const wrongs: Readonly<Record<string, { readonly is: Wrongness; readonly could: Wrongness }>> = {
  missing: { is: (k, a) => k === 'first' && a === 'second', could: (_, a) => a === 'second' },
  extra: { is: (k, a) => k === 'second' && a !== 'second', could: (_, a) => a !== 'second' },
  none: { is: (k) => k === 'none', could: () => true },
}

const expectNeedles = (cloth: Cloth, phrase: string, kind: string, isSometimes: boolean): void => {
  const { is, could } = wrongs[kind]!
  const { all, first, last, step } = namedNeedles(phrase)
  const found = wrongOf(cloth, is)
  expect([found[0], found.at(-1)]).toEqual([first, last])
  // Of every eighth needle, one may be left on which the card never asks for what could go wrong.
  const open = (needle: Needle): boolean =>
    step === 8 &&
    cloth.rows.every(({ knitted, asked }) => !could(ofNeedle(knitted, needle), ofNeedle(asked, needle)))
  if (all) expect(found).toEqual(all.filter((needle) => !open(needle)))
  const right = found.some((needle) =>
    cloth.rows.some(
      ({ knitted, asked }) =>
        could(ofNeedle(knitted, needle), ofNeedle(asked, needle)) &&
        !is(ofNeedle(knitted, needle), ofNeedle(asked, needle)),
    ),
  )
  expect(right).toBe(isSometimes)
}

/** Every statement that may be made of a fabric, and what has to be so for it. */
const claims: readonly [RegExp, (cloth: Cloth, groups: readonly (string | undefined)[]) => void][] = [
  [
    /^The pattern is missing altogether: every stitch comes out in the main colour\.$/,
    (cloth) => {
      expect(cloth.rows.every(({ knitted }) => isAll(cloth, knitted, 'first'))).toBe(true)
    },
  ],
  [
    /^Every stitch comes out in the pattern colour, whether or not the card asks for it\.$/,
    (cloth) => {
      expect(cloth.rows.every(({ knitted }) => isAll(cloth, knitted, 'second'))).toBe(true)
    },
  ],
  [
    /^The pattern is missing altogether in (\d+) of the (\d+) rows? shown(, every other one)?, and right in the others\.$/,
    (cloth, [wrong, all, isOther]) => {
      expectRowCount(cloth, wrong, all)
      const some = wrongRows(cloth)
      expect(some.every(({ knitted }) => isAll(cloth, knitted, 'first'))).toBe(true)
      const odd = cloth.rows.filter((_, n) => n % 2 === 0)
      const even = cloth.rows.filter((_, n) => n % 2 === 1)
      expect(
        [odd, even].some((half) => half.every((row) => some.includes(row)) && half.length === some.length),
      ).toBe(isOther !== undefined)
    },
  ],
  [
    /^The same row of the pattern comes again and again\.$/,
    (cloth) => {
      expectEvidence(cloth)
      expectCardRows(cloth)
      expect(new Set(cloth.rows.map(({ knitted }) => rowText(cloth, knitted))).size).toBe(1)
    },
  ],
  [
    /^Every row is a row of the pattern, but in (\d+) of the (\d+) rows shown another one comes than the one that should\.$/,
    (cloth, [wrong, all]) => {
      expectEvidence(cloth)
      expectRowCount(cloth, wrong, all)
      expectCardRows(cloth)
    },
  ],
  [
    /^The pattern comes out the other way round, as in a mirror\.$/,
    (cloth) => {
      expectEvidence(cloth)
      expectColumns(cloth, (column) => 25 - column)
    },
  ],
  [
    /^The pattern is whole, but it is (8|16) stitches further to the (right|left)\.$/,
    (cloth, [by, side]) => {
      expectEvidence(cloth)
      expectColumns(cloth, (column) => column - (side === 'right' ? 1 : -1) * Number(by))
    },
  ],
  [
    /^On (.*), the pattern colour is (sometimes )?missing where it should be\.$/,
    (cloth, [which = '', some]) => {
      expectNeedles(cloth, which, 'missing', some !== undefined)
    },
  ],
  [
    /^On (.*), the pattern colour (sometimes )?comes where it should not be\.$/,
    (cloth, [which = '', some]) => {
      expectNeedles(cloth, which, 'extra', some !== undefined)
    },
  ],
  [
    /^On (.*), no stitch is knitted and a ladder runs up the fabric\.$/,
    (cloth, [which = '']) => {
      expectNeedles(cloth, which, 'none', false)
    },
  ],
  [
    /^On (.*), no stitch is knitted in some of the rows\.$/,
    (cloth, [which = '']) => {
      expectNeedles(cloth, which, 'none', true)
    },
  ],
  [
    /^In the (\d+) rows? shown, ([\d,]+) of ([\d,]+) stitches (is|are) wrong, on (\d+) of (\d+) needles?\.$/,
    (cloth, [rows, wrong = '', all = '', verb, on, of]) => {
      const stitches = cloth.rows.flatMap(({ knitted, asked }) =>
        cloth.needles.filter((needle) => ofNeedle(knitted, needle) !== ofNeedle(asked, needle)),
      )
      expect([rows, wrong.replace(',', ''), all.replace(',', ''), on, of].map(Number)).toEqual([
        cloth.rows.length,
        stitches.length,
        cloth.rows.length * cloth.needles.length,
        wrongOf(cloth).length,
        cloth.needles.length,
      ])
      expect(verb).toBe(stitches.length === 1 ? 'is' : 'are')
    },
  ],
  [
    /^In the (\d+) rows? shown every stitch comes out as the card asks\.$/,
    (cloth, [rows]) => {
      expect(cloth.rows).toHaveLength(Number(rows))
      expect(wrongOf(cloth)).toEqual([])
    },
  ],
]

/** Takes words about a fabric apart, and holds each of their sentences against the fabric itself. */
export const expectTrue = (words: string, run: Run, { rows, bed }: Sample): void => {
  const cloth: Cloth = { run, needles: needlesBetween(bed.first, bed.last), rows }
  for (const sentence of words.split(/(?<=\.) /)) {
    const found = claims.filter(([pattern]) => pattern.test(sentence))
    expect(found, sentence).toHaveLength(1)
    for (const [pattern, holds] of found) holds(cloth, (pattern.exec(sentence) ?? []).slice(1))
  }
}
