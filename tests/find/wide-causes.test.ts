import { expect, test } from 'vitest'
import { blindColumns } from '@/find/chances.ts'
import { wideCauses } from '@/find/wide-causes.ts'
import { columnOfNeedle, usualPlace } from '@/mechanism/bed.ts'
import { makeFault } from '@/mechanism/fault.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { startRun } from '@/mechanism/pass.ts'
import { soundScenario } from '@/mechanism/scenario.ts'

/** Columns of a card of all holes that are not selected with it askew by so many mm a column. */
const blindAt = (amount: number): number => {
  const run = startRun({ ...soundScenario([0xffffff]), faults: [makeFault('card.skew', [], amount)] })
  const missed = run.passOf(2).came.flatMap((outcome, n) => (outcome === 'selected' ? [] : [toNeedle(n)]))
  return new Set(missed.map((needle) => columnOfNeedle(needle, usualPlace))).size
}

test('a card lies askew by the least hundredth of a millimetre at which its columns find no hole', () => {
  const amounts = wideCauses().flatMap(({ fault }) => (fault?.kind === 'card.skew' ? [fault.amount] : []))
  expect(amounts.map(blindAt)).toEqual(blindColumns.map((blind) => 2 * blind))
  for (const amount of amounts) expect(blindAt(amount - 0.01)).toBeLessThan(blindAt(amount))
})
