import { describe, expect, test } from 'vitest'
import { entropy, noisyBits } from '@/find/shared-bits.ts'

/**
 * Source: the weather-and-play table in J. R. Quinlan, Induction of Decision Trees, Machine Learning 1 (1986),
 * recomputed. Outlook, temperature, humidity, windy; then whether one plays.
 */
const table = `
  sunny hot high no -
  sunny hot high yes -
  overcast hot high no +
  rain mild high no +
  rain cool normal no +
  rain cool normal yes -
  overcast cool normal yes +
  sunny mild high no -
  sunny cool normal no +
  rain mild normal no +
  sunny mild normal yes +
  overcast mild high yes +
  overcast hot normal no +
  rain mild high yes -`
  .trim()
  .split('\n')
  .map((line) => line.trim().split(' '))

const bitsFor = (rows: readonly string[][]): number =>
  entropy(['+', '-'].map((plays) => rows.filter((row) => row[4] === plays).length))

/** How much a column of the table says about whether one plays. */
const gain = (column: number): number => {
  const answers = [...new Set(table.map((row) => row[column]))]
  return answers.reduce((bits, answer) => {
    const rows = table.filter((row) => row[column] === answer)
    return bits - (rows.length / table.length) * bitsFor(rows)
  }, bitsFor(table))
}

describe('information', () => {
  test('of 9 yes and 5 no is 0.9403 bits', () => {
    expect(entropy([9, 5])).toBeCloseTo(0.9403, 4)
  })

  test.each([
    ['outlook', 0, 0.2467],
    ['humidity', 2, 0.1518],
    ['wind', 3, 0.0481],
    ['temperature', 1, 0.0292],
  ])('gained by the %s', (_, column, bits) => {
    expect(gain(column)).toBeCloseTo(bits, 4)
  })

  test('of a check is the same sum: what is known of the day before less what is left after its answer', () => {
    for (const column of [0, 1, 2, 3]) {
      const answers = table.map((row) => row[column]!)
      const left = [...new Set(answers)].reduce((bits, answer) => {
        const count = answers.filter((one) => one === answer).length
        return bits + (count / table.length) * Math.log2(count)
      }, 0)
      const counts = [...Map.groupBy(answers, (answer) => answer).values()].map((same) => same.length)
      expect(noisyBits(counts, 0)).toBeCloseTo(Math.log2(table.length) - left, 12)
    }
  })
})
