import { expect, test } from 'vitest'
import { roomRound } from '@/site/stills.ts'

test('the room for wider letters lies at both sides, and the height is the figure’s', () => {
  expect(roomRound(340, 200)).toEqual({ viewBox: '-17 0 391 200', width: 391 })
})
