import { describe, expect, test } from 'vitest'
import { logSum } from '@/find/log-sum.ts'

/** Bayes' rule as the ranking applies it: logs of priors times likelihoods, normalised by their sum. */
const posterior = (prior: number, hit: number, falseAlarm: number): number => {
  const cause = Math.log(prior) + Math.log(hit)
  return Math.exp(cause - logSum([cause, Math.log(1 - prior) + Math.log(falseAlarm)]))
}

describe('Bayes’ rule', () => {
  // Source: published worked examples of a rare fault and an imperfect test, recomputed.
  test.each([
    [0.01, 0.8, 0.1, 0.075, 3],
    [0.0238, 0.85, 0.05, 0.293, 4],
  ])('%d before, %d seen with it, %d without it: %d after', (prior, hit, alarm, after, places) => {
    expect(posterior(prior, hit, alarm)).toBeCloseTo(after, places)
  })

  test('holds where the numbers are too small to be written', () => {
    expect(logSum([-2000, -2000])).toBeCloseTo(Math.log(2) - 2000, 10)
    expect(logSum([-Infinity, -3])).toBe(-3)
    expect(logSum([-Infinity, -Infinity])).toBe(-Infinity)
    expect(Math.exp(-2000 - logSum([-2000, -2000 - Math.log(3)]))).toBeCloseTo(0.75, 10)
  })
})
