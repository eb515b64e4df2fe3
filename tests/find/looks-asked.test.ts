import { describe, expect, test } from 'vitest'
import { speeds } from '@/find/battery.ts'
import { outcomesOf, passOfView } from '@/find/check-outcomes.ts'
import { checkOf } from '@/find/checks.ts'
import { hypothesesOf } from '@/find/hypotheses.ts'
import { speakingFor } from '@/find/needle-evidence.ts'
import type { Cause, Place } from '@/find/place.ts'
import { inOrder, isFast, proofLooks, twinsOf } from '@/find/proof-looks.ts'
import type { View } from '@/find/view.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import { everyHole } from '@/mechanism/card.ts'
import { faultId } from '@/mechanism/fault.ts'
import { findingOf } from './finding-of.ts'
import { notedQuery } from './noted.ts'

const card = [0xffffff, 0, 0x800001]

const view = (more: Partial<View> = {}): View => ({
  card,
  pass: 1,
  speed: 500,
  shift: 0,
  ...usualPlace,
  ...more,
})

const ranked = (...machines: readonly (readonly [number, readonly Cause[][]])[]) =>
  findingOf([], { ranked: machines.map(([probability, faults]) => ({ probability, faults })) })

describe('passes that may prove a machine', () => {
  const looks = proofLooks(card, usualPlace)
  const nameOf = ({ pass }: (typeof looks)[number]): string =>
    `${pass.card} ${pass.row} ${pass.way} ${pass.speed} ${pass.pass ?? ''}`

  test('are two rounds of an odd card, fast ones after the first, and full and blank rows', () => {
    const run = looks.filter(({ pass }) => pass.card === 'same')
    const [ordinary, fast] = [speeds.ordinary, speeds.fast]
    expect(run.map(nameOf)).toEqual([
      ...[1, 2, 3, 4, 5, 6].map((n) => `same ${((n - 1) % 3) + 1} ${n % 2 === 1 ? 1 : -1} ${ordinary} ${n}`),
      ...[2, 3, 4, 5, 6].map((n) => `same ${((n - 1) % 3) + 1} ${n % 2 === 1 ? 1 : -1} ${fast} ${n}`),
    ])
    expect(looks.slice(run.length).map(nameOf)).toEqual(
      [ordinary, fast].flatMap((speed) =>
        [1, -1].flatMap((way) => [
          `all-holes 1 ${way} ${speed} `,
          `all-holes 1 ${way} ${speed} `,
          `blank 1 ${way} ${speed} `,
        ]),
      ),
    )
    for (const look of looks) {
      expect(look.view.speed).toBe(look.pass.speed)
      expect(look.view.pass % 2 === 1 ? 1 : -1).toBe(look.pass.way)
      expect(look.view.shift).toBe(look.pass.card === 'same' ? 0 : null)
      expect(look.view.card).toEqual(
        look.pass.card === 'same' ? card : [look.pass.card === 'blank' ? 0 : everyHole],
      )
      expect(isFast(look)).toBe(look.pass.speed === fast)
    }
    expect(proofLooks([1, 2], usualPlace).filter(({ pass }) => pass.card === 'same')).toHaveLength(3)
    expect(
      proofLooks(new Array<number>(50).fill(1), usualPlace).filter(({ pass }) => pass.card === 'same'),
    ).toHaveLength(71)
    expect(proofLooks(null, usualPlace)).toHaveLength(12)
  })

  test('exclude the same pass of the run at the other speed', () => {
    expect(twinsOf(looks)).toEqual([
      0,
      6,
      7,
      8,
      9,
      10,
      1,
      2,
      3,
      4,
      5,
      ...Array.from({ length: 12 }, (_, n) => 11 + n),
    ])
  })

  test('are made full rows first, right and left in turns, then the run, then fast ones', () => {
    const chosen = [1, 6, 5, 16, 11, 14, 12, 13, 17, 19].map((n) => looks[n]!)
    const [ordinary, fast] = [speeds.ordinary, speeds.fast]
    expect(inOrder(chosen).map(nameOf)).toEqual([
      `all-holes 1 1 ${ordinary} `,
      `all-holes 1 -1 ${ordinary} `,
      `all-holes 1 1 ${ordinary} `,
      `blank 1 1 ${ordinary} `,
      `blank 1 -1 ${ordinary} `,
      `same 2 -1 ${ordinary} 2`,
      `same 2 -1 ${fast} 2`,
      `same 3 -1 ${ordinary} 6`,
      `all-holes 1 1 ${fast} `,
      `blank 1 1 ${fast} `,
    ])
  })
})

describe('a pass that is asked for', () => {
  test.each<[string, Partial<View>, ReturnType<typeof passOfView>]>([
    ['a row of the card', { pass: 2, speed: 900, shift: 1 }, { card: 'same', row: 3, way: -1, speed: 900 }],
    ['no card', { card: null, shift: null }, { card: 'none', row: null, way: 1, speed: 500 }],
    ['all holes', { card: [everyHole], shift: null }, { card: 'all-holes', row: 1, way: 1, speed: 500 }],
    ['a blank row', { card: [0], shift: null, pass: 2 }, { card: 'blank', row: 1, way: -1, speed: 500 }],
    ['a card of one row', { card: [6], shift: 0 }, { card: 'same', row: 1, way: 1, speed: 500 }],
  ])('has the card, row, way and speed of its view: %s', (_, more, pass) => {
    expect(passOfView(view(more))).toEqual(pass)
  })

  const hypotheses = hypothesesOf(
    ranked(
      [0.4, [['strip.3.seized'], ['needle.R3.gone']]],
      [0.2, [['strip.3.seized'], ['needle.R3.gone'], ['retainer.worn=3']]],
      [0.15, [['strip.4.slow=300']]],
      [0.1, [['strip.4.slow=400']]],
      [0.05, []],
      [0.02, [['strip.5.over']]],
      [0.02, [['strip.6.over']]],
      [0.02, [['strip.7.over']]],
    ),
  )

  test('may show a sound bed, and what each likely machine would show, those alike together', () => {
    const outcomes = outcomesOf(checkOf('next-row'), view(), hypotheses)
    // What goes by chance, as with a worn bar, is no outcome.
    expect(outcomes).toHaveLength(2)
    const told = outcomes.map((one) => (one.kind === 'bed' ? one.if.map((own) => own.map(faultId)) : null))
    // In a full row a slow strip and one that is stuck shifted look sound.
    expect(told[0]).toEqual([
      ['strip.4.slow'],
      ['strip.4.slow=400'],
      ['strip.5.over'],
      ['strip.6.over'],
      ['strip.7.over'],
    ])
    expect(told[1]).toEqual([['strip.3.seized', 'needle.R3.gone']])
    const [sound, seized] = outcomes
    expect(sound?.kind === 'bed' && sound.prediction).toEqual({ changed: [], chance: 0 })
    expect(seized?.kind === 'bed' && seized.prediction.changed).toHaveLength(25)
    const blank = outcomesOf(checkOf('next-row'), view({ pass: 2 }), hypotheses)
    expect(blank.map((one) => one.kind === 'bed' && one.if.length)).toEqual([2, 1, 1, 1, 1])
    expect(outcomesOf(checkOf('next-row'), null, hypotheses)).toEqual([])
  })

  test('or a check finds nothing, or a part that is likely wrong, whatever the amount', () => {
    const found = outcomesOf(checkOf('strips'), null, hypotheses).map((one) =>
      one.kind === 'part' ? one.found && faultId(one.found) : '',
    )
    expect(found).toEqual([null, 'strip.3.seized', 'strip.4.slow', 'strip.5.over', 'strip.6.over'])
    expect(outcomesOf(checkOf('belt'), null, hypotheses)).toEqual([{ kind: 'part', found: null }])
  })
})

describe('the needles that speak for a place', () => {
  const passes = [
    { row: 1, way: 1, speed: 500 },
    { row: 2, way: -1, speed: 500 },
  ] as const
  const full = notedQuery(card, passes, ['strip.3.seized'])
  const finding = ranked([0.6, [['strip.3.seized'], ['needle.R5.gone']]], [0.4, []])
  const speaking = (place: Place, query = full) => speakingFor(query, finding, place)

  test('are those that do what it would do wrong; against it those that do what it would do right', () => {
    const [holes, blank] = speaking('strip.3')
    expect(holes!.for).toHaveLength(25)
    expect(new Set(holes!.for.map((needle) => needle % 8)).size).toBe(1)
    expect(holes!.against).toEqual([])
    expect(blank).toEqual({ for: [], against: [] })
    const [first] = holes!.for
    const other = {
      ...full.passes[0]!,
      needles: full.passes[0]!.needles.slice(0, first) + 's?' + full.passes[0]!.needles.slice(first! + 2),
    }
    const [changed] = speaking('strip.3', { ...full, passes: [other, full.passes[1]!] })
    expect(changed!.for).toEqual(holes!.for.slice(1))
    expect(changed!.against).toEqual([first])
    expect(speaking('needle.R5')[0]).toEqual({ for: [], against: [104] })
  })

  test('are none where no likely machine has it wrong, or nothing was noted', () => {
    expect(speaking('belt')).toEqual([
      { for: [], against: [] },
      { for: [], against: [] },
    ])
    const blind = { ...full, passes: full.passes.map((pass) => ({ ...pass, needles: '?'.repeat(200) })) }
    expect(speaking('strip.3', blind)).toEqual(speaking('belt'))
  })
})
