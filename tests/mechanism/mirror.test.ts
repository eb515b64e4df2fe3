import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Fault, makeFault } from '@/mechanism/fault.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { dimensionsOf } from '@/mechanism/own.ts'
import { startRun } from '@/mechanism/pass.ts'
import type { Scenario } from '@/mechanism/scenario.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { faultsAmong, passes, rows, scenarios, without } from './arbitraries.ts'
import { check } from './check.ts'
import { count } from './make.ts'
import { holeIn, rowWith } from './trade.ts'

const mirroredRow = (row: number): number =>
  rowWith(...count(1, 24).filter((column) => holeIn(row, 25 - column)))

const mirroredFault = (fault: Fault, rowCount: number): Fault => {
  const { kind, amount } = fault
  const [first = 0, column = 0]: readonly number[] = fault.at
  if (kind === 'card.torn' || kind === 'card.blocked')
    return makeFault(kind, [first > rowCount ? first : (first % rowCount) + 1, 25 - column], amount)
  if (fault.kind === 'belt.timing') return makeFault(kind, [], -fault.amount)
  if (kind === 'presser.right.worn') return makeFault('presser.left.worn', [], amount)
  if (kind === 'presser.left.worn') return makeFault('presser.right.worn', [], amount)
  if (kind === 'catch.broken' || kind.startsWith('needle.')) return makeFault(kind, [199 - first], amount)
  if (kind.startsWith('strip.')) return makeFault(kind, [9 - first], amount)
  return fault.at.length === 1 ? makeFault(kind, [25 - first], amount) : fault
}

/** The machine seen in a mirror at the bed's middle, its card one row further so that it is one pass behind. */
const mirrored = (scenario: Scenario): Scenario => {
  const card = scenario.card
  const { presserRight, presserLeft } = dimensionsOf(scenario.own)
  const pressers = { presserRight: presserLeft, presserLeft: presserRight }
  return {
    ...scenario,
    card: card && card.map((_, n) => mirroredRow(card[(n + card.length - 1) % card.length]!)),
    faults: scenario.faults.map((fault) => mirroredFault(fault, card?.length ?? 0)),
    own: { ...scenario.own, ...pressers },
    bed: { first: toNeedle(199 - scenario.bed.last), last: toNeedle(199 - scenario.bed.first) },
    // Column 24 of the image is column 1 of the machine; any needle of a column names it.
    columnOne: toNeedle((199 - scenario.columnOne + 1) % 24),
  }
}

// The card's feed counts turns from pass 1 on, and scatter is drawn part by part: neither is a mirror image of itself.
const feed = [
  ...(['card.locked', 'pawl.right', 'pawl.left', 'pawl.double', 'pawl.skips', 'pawl.jumps'] as const),
  ...(['turn.short', 'turn.twice', 'belt.off'] as const),
]
const mirrorable = scenarios({
  card: fc.option(fc.array(rows, { minLength: 1, maxLength: 5 }), { freq: 9 }),
  faults: faultsAmong(without(...feed, 'retainer.worn', 'pin.sticky', 'pivots.loose'), 6),
  wear: fc.constant(0),
})

test('the mirror sends needle i to 199 - i, column c to 25 - c, strip s to 9 - s, right to left: each pass of a machine is the next pass of its mirror image', () => {
  check(
    fc.property(mirrorable, passes, (scenario, number) => {
      const pass = startRun(scenario).passOf(number)
      const image = startRun(mirrored(scenario)).passOf(number + 1)
      expect(image.way).toBe(-pass.way)
      expect(image.asked.toReversed()).toEqual(pass.asked)
      expect(image.came.toReversed()).toEqual(pass.came)
      for (const [n, kept] of image.keptFor.toReversed().entries())
        expect(kept).toBeCloseTo(pass.keptFor[n]!, 8)
      expect(image.departures.map(({ needle, stage }) => [199 - needle, stage]).reverse()).toEqual(
        pass.departures.map(({ needle, stage }) => [needle, stage]),
      )
    }),
    300,
  )
})

test('the mirror sends the frame at x to the frame at 199 - x', () => {
  // The first pass of the machine has none before it, the second of its image has.
  const secondOrLater = fc.integer({ min: 2, max: 9 })
  const place = fc.double({ min: -12, max: 211, noNaN: true })
  check(
    fc.property(mirrorable, secondOrLater, place, (scenario, number, x) => {
      const frame = frameAt(startRun(scenario), number, x)
      const image = frameAt(startRun(mirrored(scenario)), number + 1, 199 - x)
      const same = (one: Float64Array, other: Float64Array): void => {
        const back = [...other].reverse()
        for (const [n, value] of one.entries()) expect(back[n]).toBeCloseTo(value, 8)
      }
      same(frame.pinHeights, image.pinHeights)
      same(frame.pinLeans, image.pinLeans)
      same(frame.rockerOuts, image.rockerOuts)
      same(frame.stripShifts, image.stripShifts)
      same(frame.buttHeights, image.buttHeights)
      same(frame.needleTravels, image.needleTravels)
    }),
    150,
  )
})
