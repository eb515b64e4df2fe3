import { expect, test } from 'vitest'
import { layouts } from '@/drawings/chain/layout.ts'
import { wholeBedOf } from '@/mechanism/bed.ts'
import { machineInState } from '@/site/machine-state.ts'
import { roomRound, stillWindow } from '@/site/stills.ts'

test('the room for wider letters lies at both sides, and the height is the figure’s', () => {
  expect(roomRound(340, 200)).toEqual({ viewBox: '-17 0 391 200', width: 391 })
})

test.each(['pass=1', 'pass=2', 'pass=1&at=R112'])(
  'a still of the whole chain shows a catch of each strip where the carriage waits beyond the bed: %s',
  (state) => {
    const { frame } = machineInState(state)
    const { first, last } = wholeBedOf(frame.condition.dimensions.needles)
    const from = stillWindow(frame)
    const to = from + layouts.narrow.needles
    expect(Math.min(to, last + 0.5) - Math.max(from, first - 0.5)).toBeGreaterThanOrEqual(8)
  },
)

test('a still of the whole chain follows the carriage along the bed', () => {
  const { frame } = machineInState('pass=1&at=R28')
  expect(stillWindow(frame)).toBeLessThan(frame.x)
  expect(stillWindow(frame) + layouts.narrow.needles).toBeGreaterThan(frame.x)
})
