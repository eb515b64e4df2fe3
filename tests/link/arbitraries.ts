import fc from 'fast-check'
import { type CardChoice, limits, rowsOf, type State } from '@/link/state.ts'
import { passEnds, wholeBedOf } from '@/mechanism/bed.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import type { Fault } from '@/mechanism/fault.ts'
import { contradict, sortedFaults } from '@/mechanism/fault-list.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { dimensionsOf, nothingOwn } from '@/mechanism/own.ts'
import { bedsWithin, owns } from '../mechanism/arbitraries.ts'
import { library } from './library.ts'

const row = fc.integer({ min: 0, max: 0xffffff })

export const ownCards = fc.oneof(
  { weight: 9, arbitrary: fc.array(row, { minLength: 1, maxLength: 30 }) },
  { weight: 1, arbitrary: fc.array(row, { minLength: 190, maxLength: 200, size: 'max' }) },
)

const choices: fc.Arbitrary<CardChoice> = fc.oneof(
  fc.constantFrom(...library.cards.keys()).map((id) => ({ kind: 'site' as const, id })),
  ownCards.map((rows) => ({ kind: 'own' as const, rows })),
  fc.constant({ kind: 'none' as const }),
)

/** Numbers from `least` to `most` with up to four decimals. */
const decimal = (least: number, most: number) =>
  fc
    .oneof(
      fc.integer({ min: Math.ceil(least * 10_000), max: Math.floor(most * 10_000) }),
      fc.integer({ min: Math.ceil(least), max: Math.floor(most) }).map((n) => n * 10_000),
    )
    .map((n) => n / 10_000)

const needleTexts = (length: number): fc.Arbitrary<string> =>
  fc.tuple(fc.constantFrom('L', 'R'), fc.integer({ min: 1, max: length / 2 })).map((parts) => parts.join(''))

const part = {
  ROW: (rows: number) => fc.integer({ min: 1, max: rows }),
  COL: fc.integer({ min: 1, max: 24 }),
  STRIP: fc.integer({ min: 1, max: 8 }),
  PASS: fc.integer({ min: 2, max: 9999 }),
}

/**
 * Every id of the table of faults, for a card of so many rows and a bed of so many needles, with numbers anywhere in their
 * ranges.
 */
export const faultIds = (rows: number, length = 200): fc.Arbitrary<string> => {
  const needleText = needleTexts(length)
  const id = (...words: (string | fc.Arbitrary<string | number>)[]): fc.Arbitrary<string> =>
    fc
      .tuple(...words.map((word) => (typeof word === 'string' ? fc.constant(word) : word)))
      .map((all) => all.join(''))
  return fc.oneof(
    id('card.', fc.constantFrom('torn', 'blocked'), '.', part.ROW(rows), '.', part.COL),
    id('card.side=', decimal(-5, 5)),
    id('card.skew=', decimal(-1, 1)),
    id(fc.constantFrom('card.reversed', 'card.locked', 'pawl.right', 'pawl.left', 'pawl.double')),
    id('turn.short.', part.PASS),
    id('pin.', part.COL, fc.constantFrom('.low', '.high', '.over')),
    id('sweep.worn=', decimal(0, 3)),
    id('rocker.', part.COL, '.dead'),
    id('rocker.', part.COL, '.worn=', decimal(0, 3)),
    id('strip.', part.STRIP, fc.constantFrom('.seized', '.over', '.slow')),
    id('strip.', part.STRIP, '.slow=', decimal(1, 5000)),
    id('catch.', needleText, '.broken'),
    id('needle.', needleText, fc.constantFrom('.bent', '.stiff', '.gone')),
    id('needle.', needleText, '.stiff=', decimal(1, 5000)),
    id('retainer.worn=', decimal(1, 5000)),
    id('presser.', fc.constantFrom('right', 'left'), '.worn=', decimal(0, 1.5)),
    id('gate.1.', fc.constantFrom('low', 'high'), '=', decimal(0, 1.5)),
    id('belt.timing=', decimal(-96, 96)),
    id('belt.slack=', decimal(0, 24)),
  )
}

/** Faults that can stand together, in the order of their ids. */
const faults = (rows: number, length: number): fc.Arbitrary<Fault[]> =>
  fc.array(faultIds(rows, length), { maxLength: 12 }).map((ids) => {
    const kept: Fault[] = []
    for (const fault of ids.map(faultOf))
      if (!kept.some((other) => contradict(fault, other))) kept.push(fault)
    return sortedFaults(kept)
  })

/** Any text a browser may hand over as a note: every character but halves of one. */
const notes = fc.oneof(
  fc.constant(''),
  fc.string({ unit: 'binary', maxLength: limits.noteCharacters, size: 'max' }),
  fc.string({ unit: fc.constantFrom(...Array.from('&=#+%?<>"\'; \n\t€𝄞')), maxLength: 40 }),
)

/** Every state that a link can say. */
export const states: fc.Arbitrary<State> = fc
  .record({
    card: choices,
    pass: fc.integer({ min: 1, max: 9999 }),
    own: fc.oneof({ arbitrary: fc.constant(nothingOwn), weight: 3 }, { arbitrary: owns, weight: 1 }),
  })
  .chain((rest) => {
    const length = dimensionsOf(rest.own).needles
    return fc.record({
      card: fc.constant(rest.card),
      pass: fc.constant(rest.pass),
      own: fc.constant(rest.own),
      bed: fc.oneof(fc.constant(wholeBedOf(length)), bedsWithin(length)),
    })
  })
  .chain(({ card, pass, own, bed }) => {
    const { start, end } = passEnds(pass, bed)
    return fc.record({
      card: fc.constant(card),
      pass: fc.constant(pass),
      at: fc.oneof(fc.constant(start), decimal(Math.min(start, end), Math.max(start, end))),
      faults: faults(rowsOf(card, library)?.length ?? 200, dimensionsOf(own).needles),
      speed: decimal(50, 2000),
      wear: decimal(0, 1),
      seed: fc.integer({ min: 0, max: 0xffffffff }),
      bed: fc.constant(bed),
      columnOne: fc.oneof(fc.constant(100), fc.integer({ min: 100, max: 123 })).map(toNeedle),
      own: fc.constant(own),
      note: notes,
    })
  })
