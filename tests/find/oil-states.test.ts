import { describe, expect, test } from 'vitest'
import { oilChances, stripChances } from '@/find/chances.ts'
import { oils } from '@/find/finding.ts'
import { oilStates } from '@/find/oil-states.ts'

const of = (name: string) => oilStates.filter(({ oil }) => oil === name)
const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0)

describe('the states of the oil', () => {
  test.each(oils)('add up to the table: %s', (name) => {
    expect(sum(of(name).map(({ chance }) => chance))).toBeCloseTo(oilChances[name], 12)
    for (const state of ['slow', 'seized', 'over'] as const)
      expect(sum(of(name).map(({ chance, strips }) => chance * strips[state]))).toBeCloseTo(
        oilChances[name] * stripChances[name][state],
        12,
      )
  })

  test('leave every strip some chance of each state, of being sound as well', () => {
    for (const { strips } of oilStates) {
      expect(Math.min(strips.slow, strips.seized, strips.over)).toBeGreaterThan(0)
      expect(strips.slow + strips.seized + strips.over).toBeLessThan(1)
    }
  })

  test('make seven seized strips far likelier together than one by one, and two hardly', () => {
    const likelier = (count: number): number =>
      sum(of('set').map(({ chance, strips }) => chance * strips.seized ** count)) /
      (oilChances.set * stripChances.set.seized ** count)
    expect(likelier(7)).toBeGreaterThan(50)
    expect(likelier(2)).toBeLessThan(1.3)
  })
})
