import { expect, test } from 'vitest'
import { extentOf } from '@/drawings/scene/engine/extent.ts'
import { apartLines, apartMachine, assemblies } from '@/drawings/scene/machine/apart.ts'
import { states } from './machines.ts'

test('the assemblies of the machine taken apart are one above the other, in the order of the push', () => {
  for (const [n, { room }] of assemblies.entries()) {
    expect(room[0]).toBeLessThan(room[1])
    const below = assemblies[n + 1]
    if (below) expect(below.room[1]).toBeLessThan(room[0])
  }
})

test.each(states)('each part of it is in its assembly’s room: %s', (_, pose) => {
  const outside = apartMachine(pose).flatMap((piece) => {
    const { room, name } = assemblies.find(({ has }) => has(piece))!
    if (!piece.shape) return []
    const { least, most } = extentOf(piece.shape)
    return least[2] < room[0] || most[2] > room[1]
      ? [`${piece.name} from ${least[2]} to ${most[2]} in ${name}`]
      : []
  })
  expect(outside).toEqual([])
})

test.each(states)(
  'its lines are upright, and each goes down from one assembly to a lower one: %s',
  (_, pose) => {
    const roomOf = (level: number): number =>
      assemblies.findIndex(({ room }) => level >= room[0] - 3 && level <= room[1] + 3)
    for (const [from, to] of apartLines(pose)) {
      expect([from[0], from[1]]).toEqual([to[0], to[1]])
      expect(roomOf(from[2])).toBeGreaterThanOrEqual(0)
      expect(roomOf(to[2])).toBeGreaterThan(roomOf(from[2]))
    }
  },
)
