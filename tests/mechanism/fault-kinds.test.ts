import { expect, test } from 'vitest'
import { indexKindsOf, makeFault } from '@/mechanism/fault.ts'
import { faultKinds } from '@/mechanism/fault-kinds.ts'
import { startRun } from '@/mechanism/pass.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { kinds } from './arbitraries.ts'
import { scattered } from './cards.ts'
import { count } from './make.ts'

test.each(kinds)('%s shows at the ordinary speed within a few passes, with its usual amount', (kind) => {
  // Row, column, strip, pass or needle 3: row 3 of the card has a hole in column 2 but none in column 3.
  const column = kind === 'card.blocked' ? 2 : 3
  const at = indexKindsOf(kind).map((place) => (place === 'column' ? column : 3))
  const fault = makeFault(kind, at, faultKinds[kind].amount?.usual ?? null)
  const run = startRun({ ...soundScenario(scattered), faults: [fault] })
  expect(count(1, 7).flatMap((pass) => [...run.passOf(pass).departures])).not.toEqual([])
})

const measured = kinds.flatMap((kind) => {
  const { amount } = faultKinds[kind]
  return amount ? [{ kind, ...amount }] : []
})

test.each(measured)('$kind has a usual amount within its range, and steps from end to end', (amount) => {
  const { least, most, step, usual } = amount
  expect(usual).toBeGreaterThanOrEqual(least)
  expect(usual).toBeLessThanOrEqual(most)
  expect((most - least) / step).toBeCloseTo(Math.round((most - least) / step), 6)
})

test('numbers are in millimetres, a column or not, in milliseconds, in needles or a share', () => {
  const inUnit = (unit: string): string[] =>
    measured.filter((one) => one.unit === unit).map(({ kind }) => kind)
  expect(inUnit('mm a column')).toEqual(['card.skew'])
  expect(inUnit('needles')).toEqual(['belt.timing', 'belt.slack'])
  expect(inUnit('share')).toEqual(['pin.sticky'])
  expect(inUnit('ms')).toEqual(['strip.slow', 'needle.stiff', 'retainer.worn'])
  expect(inUnit('mm')).toEqual([
    ...['card.side', 'sweep.worn', 'pivots.loose', 'rocker.worn', 'presser.right.worn', 'presser.left.worn'],
    ...['gate.1.low', 'gate.1.high'],
  ])
})
