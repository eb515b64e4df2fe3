import { expect, test } from 'vitest'
import type { Hull, Mark } from '@/drawings/scene/engine/piece.ts'
import { machine } from '@/drawings/scene/machine/machine.ts'
import { rowPitch } from '@/drawings/scene/machine/card.ts'
import { drawnDown } from '@/drawings/shared/turn.ts'
import { turnPose } from './machines.ts'

/** The pieces of a part in the machine with its card so many rows behind. */
const piecesOf = (name: string, roll: number): Hull[] =>
  machine(turnPose(drawnDown, roll)).flatMap((piece) =>
    piece.name === name && piece.shape?.kind === 'hull' ? [piece.shape] : [],
  )

/** The holes on the card's upper side, each with the middle of its corners. */
const holesAt = (roll: number): (Mark & { readonly back: number })[] =>
  piecesOf('card', roll).flatMap(({ faces }) =>
    faces
      .filter(({ normal }) => normal[2] > 0.5)
      .flatMap(({ marks }) => marks)
      .filter(({ look }) => look === 'hole')
      .map((mark) => ({
        ...mark,
        back: mark.points.reduce((sum, [, y]) => sum + y, 0) / mark.points.length,
      })),
  )

/** Where from front to back holes are that are whole and lie flat. */
const wholeFlat = (roll: number): number[] =>
  [
    ...new Set(
      holesAt(roll)
        .filter(({ open, back }) => !open?.length && back < 39)
        .map(({ back }) => back.toFixed(3)),
    ),
  ]
    .map(Number)
    .sort((one, other) => one - other)

test('the card’s holes go to the front as far as the card has still to go on', () => {
  const [rest, behind] = [wholeFlat(0), wholeFlat(0.2)]
  expect(rest).toHaveLength(3)
  for (const back of behind)
    expect(rest.some((other) => Math.abs(back - other - 0.2 * rowPitch) < 0.01)).toBe(true)
})

test('a row behind, each row lies where the next one will', () => {
  const count = (roll: number, from: number, to: number): number =>
    holesAt(roll).filter(({ back }) => back > from && back < to).length
  // The second row of these has every hole, the one before it fewer.
  expect(count(1, 36, 40)).toBe(count(0, 31, 35))
  expect(count(0, 31, 35)).not.toBe(count(0, 36, 40))
})

test('holes that go over a bend of the card are parted there without a line', () => {
  const parted = holesAt(0.5).filter(({ open }) => (open?.length ?? 0) > 0)
  expect(parted.length).toBeGreaterThan(4)
  for (const { points } of holesAt(0.5)) expect(points.length).toBeGreaterThan(2)
})

test('the ratchet turns with the card, by a tooth a row', () => {
  const teeth = (roll: number): string[] =>
    piecesOf('drum', roll)
      .filter(({ faces }) => faces.length === 5)
      .map(({ points }) => points.map((point) => point.map((place) => place.toFixed(3)).join(' ')).join(' '))
      .sort()
  const [rest, half, row] = [teeth(0), teeth(0.5), teeth(1)]
  expect(rest).toHaveLength(8)
  expect(half).not.toEqual(rest)
  expect(row).toEqual(rest)
})
