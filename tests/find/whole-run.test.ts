import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bothWays, wholeRuns } from '@/find/whole-run.ts'
import { rowDue, scenarioIn } from '@/find/view.ts'
import { usualPlace, wayOfPass } from '@/mechanism/bed.ts'
import type { Fault, FaultId } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { startRun } from '@/mechanism/pass.ts'
import { randomCard } from './make.ts'

/** Whether every needle of every pass comes out as on a sound machine, by the whole model. */
const byForce = (card: readonly number[], faults: readonly Fault[], seed: number): boolean =>
  bothWays(card, usualPlace).every((views) =>
    views.every((view) => {
      const own = startRun({ ...scenarioIn(view, faults), seed }).passOf(view.pass)
      const sound = startRun(scenarioIn(view, [])).passOf(view.pass)
      return own.came.every((outcome, needle) => outcome === sound.came[needle])
    }),
  )

const some: readonly FaultId[] = [
  'strip.3.seized',
  'strip.3.slow=120',
  'strip.5.slow=1000',
  'strip.1.over',
  'pin.4.low',
  'pin.12.high',
  'pin.3.over',
  'pin.9.sticky=0.05',
  'rocker.7.worn=0.2',
  'rocker.7.dead',
  'needle.R3.bent',
  'needle.L9.stiff=2',
  'needle.L9.stiff=50',
  'catch.L100.broken',
  'needle.R100.gone',
  'retainer.worn=3',
  'pivots.loose=0.1',
  'pivots.loose=0.2',
  'belt.timing=0.1',
  'belt.timing=8',
  'turn.short.3',
  'pawl.left',
  'card.locked',
  'gate.1.low=0.1',
  'carriage.plain',
]

describe('every row both ways', () => {
  test.each([1, 2, 3, 4, 7, 12])('of a card of %d rows, is each row and each way once', (rows) => {
    const views = bothWays(randomCard(rows, 4), usualPlace).flat()
    const seen = views.map((view) => `${rowDue(view)} ${wayOfPass(view.pass)}`)
    expect(seen).toHaveLength(2 * rows)
    expect(new Set(seen).size).toBe(2 * rows)
    expect(new Set(views.map(({ speed }) => speed))).toEqual(new Set([500]))
  })

  test('is two runs where the card has an even number of rows, each from its first pass on', () => {
    const card = randomCard(4, 4)
    const runs = bothWays(card, usualPlace)
    expect(runs.map((views) => views.map((view) => [view.pass, rowDue(view)]))).toEqual([
      [
        [1, 1],
        [2, 2],
        [3, 3],
        [4, 4],
      ],
      [
        [1, 2],
        [2, 3],
        [3, 4],
        [4, 1],
      ],
    ])
    for (const { card: laid, pass } of runs[1]!) expect(laid![pass - 1]).toBe(card[pass % 4])
  })
})

describe('whether a machine comes out whole', { timeout: 120_000 }, () => {
  test('is so of a sound one', () => {
    expect(wholeRuns(randomCard(5, 1), usualPlace)([], 1)).toBe(true)
  })

  test.each(some)('with %s, is as the whole model has it', (id) => {
    for (const rows of [4, 5]) {
      const card = randomCard(rows, 21)
      const isWhole = wholeRuns(card, usualPlace)
      for (const seed of [1, 2, 3])
        expect(isWhole([faultOf(id)], seed)).toBe(byForce(card, [faultOf(id)], seed))
    }
  })

  test('with several faults, is as the whole model has it', () => {
    const kindAndPart = (id: FaultId): string =>
      id.replace(/=.*/, '').replace(/\.(low|high|over|seized|slow|sticky|dead|worn|stiff|gone)$/, '')
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }),
        fc.uniqueArray(fc.constantFrom(...some), { maxLength: 4, selector: kindAndPart }),
        fc.integer({ min: 1, max: 99 }),
        (rows, ids, seed) => {
          const card = randomCard(rows, seed)
          const faults = ids.map(faultOf)
          expect(wholeRuns(card, usualPlace)(faults, seed)).toBe(byForce(card, faults, seed))
        },
      ),
      { numRuns: 60 },
    )
  })

  test('asks chance again for each seed, and for nothing else', () => {
    const isWhole = wholeRuns([0xffffff, 0, 0xffffff], usualPlace)
    const rare = [faultOf('pin.9.sticky=0.05')]
    const outcomes = Array.from({ length: 60 }, (_, seed) => isWhole(rare, seed))
    expect(new Set(outcomes)).toEqual(new Set([true, false]))
    expect(Array.from({ length: 60 }, (_, seed) => isWhole(rare, seed))).toEqual(outcomes)
  })
})
