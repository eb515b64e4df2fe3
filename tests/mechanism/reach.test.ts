import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { faultId, type Fault } from '@/mechanism/fault.ts'
import type { FaultKindName } from '@/mechanism/fault-kinds.ts'
import { startRun } from '@/mechanism/pass.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { needlesOfBed, ofNeedle } from '@/mechanism/indices.ts'
import { cards, faultAmong, faultOf, needles, passes, scenarios, speeds, without } from './arbitraries.ts'
import { check } from './check.ts'
import { everyNeedle } from './make.ts'
import { columnAt, stripAt } from './trade.ts'

interface Where {
  readonly needle: number
  readonly pass: number
  /** Number of the card's row due, and how many rows it has. */
  readonly row: number
  /** The needle of column 1. */
  readonly one: number
}

type Reach = (fault: Fault, where: Where) => boolean

const first = (fault: Fault): number => fault.at[0]!
const ownColumn: Reach = (fault, { needle, one }) => columnAt(needle, one) === first(fault)
const ownStrip: Reach = (fault, { needle, one }) => stripAt(needle, one) === first(fault)
const stripOfPin: Reach = (fault, { needle, one }) => stripAt(needle, one) === ((first(fault) - 1) % 8) + 1
const ownNeedle: Reach = (fault, { needle }) => needle === first(fault)
const ownHole: Reach = (fault, { needle, row, one }) =>
  row === first(fault) && columnAt(needle, one) === fault.at[1]

/** The kinds of fault that reach only some needles or passes of an otherwise sound machine, and which. */
const reaches: readonly (readonly [FaultKindName, string, Reach])[] = [
  ['card.torn', 'its hole’s needles in its row', ownHole],
  ['card.blocked', 'its hole’s needles in its row', ownHole],
  ['card.locked', 'passes after the first', (_, { pass }) => pass > 1],
  ['pawl.right', 'passes from the second', (_, { pass }) => pass >= 2],
  ['pawl.left', 'passes from the third', (_, { pass }) => pass >= 3],
  ['pawl.double', 'passes from the second', (_, { pass }) => pass >= 2],
  ['turn.short', 'passes from its own', (fault, { pass }) => pass >= first(fault)],
  ['pawl.skips', 'passes from its own', (fault, { pass }) => pass >= first(fault)],
  ['pawl.jumps', 'passes from its own', (fault, { pass }) => pass >= first(fault)],
  ['turn.twice', 'passes from the second', (_, { pass }) => pass >= 2],
  ['pin.sticky', 'its column', ownColumn],
  ['pin.low', 'its column', ownColumn],
  ['pin.high', 'its column', ownColumn],
  ['pin.over', 'its strip', stripOfPin],
  ['rocker.dead', 'its column', ownColumn],
  ['rocker.worn', 'its column', ownColumn],
  ['strip.seized', 'its strip', ownStrip],
  ['strip.over', 'its strip', ownStrip],
  ['strip.slow', 'its strip', ownStrip],
  ['catch.broken', 'its needle', ownNeedle],
  ['needle.bent', 'its needle', ownNeedle],
  ['needle.gone', 'its needle', ownNeedle],
  ['needle.stiff', 'its needle', ownNeedle],
  ['presser.right.worn', 'passes to the right', (_, { pass }) => pass % 2 === 1],
  ['presser.left.worn', 'passes to the left', (_, { pass }) => pass % 2 === 0],
]

describe('in a machine otherwise sound', () => {
  test.each(reaches)('%s reaches only %s', (kind, _, reach) => {
    check(
      fc.property(cards, speeds, passes, faultOf(kind), needles, (card, speed, pass, fault, columnOne) => {
        const scenario = { ...soundScenario(card), speed, faults: [fault], columnOne }
        const { came, asked } = startRun(scenario).passOf(pass)
        const row = ((pass - 1) % card.length) + 1
        const changed = everyNeedle.filter((needle) => came[needle] !== asked[needle])
        expect(changed.filter((needle) => !reach(fault, { needle, pass, row, one: columnOne }))).toEqual([])
      }),
    )
  })

  test.each(reaches)('%s does show somewhere in some card', (kind) => {
    const seen = fc.sample(fc.tuple(cards, passes, faultOf(kind)), { numRuns: 200, seed: 5 })
    const shows = seen.some(
      ([card, pass, fault]) =>
        startRun({ ...soundScenario(card), faults: [fault] }).passOf(pass).departures.length > 0,
    )
    expect(shows).toBe(true)
  })
})

describe('in a machine with any other faults and wear', () => {
  const onlyStrip = ['pin.low', 'pin.high', 'pin.over', 'rocker.dead', 'rocker.worn'] as const
  const narrow = [
    ...onlyStrip,
    'strip.seized',
    'strip.over',
    'strip.slow',
    'catch.broken',
    'needle.bent',
  ] as const
  const narrowest = ['needle.gone', 'needle.stiff'] as const
  const base = scenarios({ faults: fc.array(faultAmong(without()), { maxLength: 5 }) })

  test('one fault more of a column or a strip reaches its strip alone, and of a needle that needle alone', () => {
    check(
      fc.property(base, faultAmong([...narrow, ...narrowest]), passes, (scenario, fault, pass) => {
        const before = startRun(scenario).passOf(pass)
        const after = startRun({ ...scenario, faults: [...scenario.faults, fault] }).passOf(pass)
        const isNeedles = /^(catch|needle)/.test(faultId(fault))
        const reached = isNeedles ? ownNeedle : stripOfPin
        const changed = needlesOfBed(before.came.length).filter(
          (needle) => ofNeedle(before.came, needle) !== ofNeedle(after.came, needle),
        )
        expect(
          changed.filter((needle) => !reached(fault, { needle, pass, row: 1, one: scenario.columnOne })),
        ).toEqual([])
      }),
      300,
    )
  })
})
