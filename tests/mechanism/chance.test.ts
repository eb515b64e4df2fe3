import { describe, expect, test } from 'vitest'
import { toBed } from '@/mechanism/bed.ts'
import { chanceOfSelection } from '@/mechanism/chance.ts'
import { count, machine } from './make.ts'
import { rowWith } from './trade.ts'

/** R1 to R24: each with a pin, a rocker, a catch and a butt of its own, so that their scatters are independent. */
const oneOfEach = toBed({ first: 100, last: 123 })
const machines = 800

const shareSelected = (faults: readonly string[], wear: number, pass: number): number => {
  let selected = 0
  for (const seed of count(1, machines)) {
    const { came } = machine([0xffffff], faults, { wear, seed, bed: oneOfEach }).passOf(pass)
    for (let needle = oneOfEach.first; needle <= oneOfEach.last; needle++)
      if (came[needle] === 'selected') selected++
  }
  return selected / (machines * 24)
}

describe('the chance that a needle under a hole is selected', () => {
  // Four standard deviations of a share of n independent needles, sqrt(p(1 - p)/n), and one needle more.
  test.each([
    [[], 0.5, 1],
    [[], 0.7, 2],
    [[], 0.8, 1],
    [[], 0.9, 2],
    [[], 1, 1],
    [['sweep.worn=0.3'], 0.4, 1],
    [['belt.timing=0.4'], 0.4, 1],
    [['belt.slack=0.9'], 0.5, 2],
    [['presser.right.worn=0.35'], 0.6, 1],
    [['presser.left.worn=0.35'], 0.6, 2],
    [['gate.1.low=0.4'], 0.5, 1],
    [['gate.1.high=0.3', 'presser.left.worn=0.3'], 0.7, 2],
    [['card.side=1.2'], 0.5, 1],
    [['presser.right.worn=0.58'], 0, 1],
    [['sweep.worn=0.71'], 0, 2],
  ])('with %j at wear %d is the share found in many machines, in pass %i', (faults, wear, pass) => {
    const chance = chanceOfSelection(machine([0xffffff], faults, { wear }), pass % 2 === 1 ? 1 : -1)
    const found = shareSelected(faults, wear, pass)
    const n = machines * 24
    expect(Math.abs(found - chance)).toBeLessThan(4 * Math.sqrt((chance * (1 - chance)) / n) + 1 / n)
  })
  test('is nought where the belt is out by 8, as the push that comes is another hole’s', () => {
    const run = machine([rowWith(3)], ['belt.timing=8'])
    expect(run.passOf(1).came[102]).toBe('plain')
    expect(chanceOfSelection(run, 1)).toBe(0)
  })

  test('falls with wear', () => {
    const chances = [0, 0.3, 0.6, 0.7, 0.8, 0.9, 1].map((wear) =>
      chanceOfSelection(machine([0], [], { wear }), 1),
    )
    expect(chances).toEqual([...chances].sort((a, b) => b - a))
    expect(chances[0]).toBeCloseTo(1, 9)
    expect(chances[6]).toBeLessThan(0.2)
  })
})
