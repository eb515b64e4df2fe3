import cdf from '@stdlib/stats-base-dists-normal-cdf'
import { describe, expect, test } from 'vitest'
import { chanceOfRattling, chanceOfSelection } from '@/mechanism/chance.ts'
import { owenT } from '@/mechanism/normal.ts'
import { normalDraw, uniformDraw } from '@/mechanism/random.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { machine } from './make.ts'
import { tried, worn } from './tried.ts'

/** T(h, a) summed in 100,000 steps of its integral. */
const summed = (h: number, a: number): number => {
  const steps = 100_000
  let sum = 0
  for (let n = 0; n < steps; n++) {
    const x = (a * (n + 0.5)) / steps
    sum += Math.exp((-h * h * (1 + x * x)) / 2) / (1 + x * x)
  }
  return (sum * a) / steps / (2 * Math.PI)
}

describe('Owen’s T', () => {
  test.each([
    [0, 1],
    [0.5, 0.5],
    [-1.5, 0.3],
    [2, 1],
    [0.0625, 3],
    [3, 7],
    [-0.7, 20],
  ])('is its integral at h = %d, a = %d', (h, a) => {
    expect(owenT(h, a)).toBeCloseTo(summed(h, a), 9)
  })

  test('has its known values: an angle at h = 0, and Φ(h)Φ(-h)/2 at a = 1', () => {
    expect(owenT(0, 0.5)).toBeCloseTo(Math.atan(0.5) / (2 * Math.PI), 12)
    for (const h of [0.3, 1, 2.4]) expect(owenT(h, 1)).toBeCloseTo((cdf(h, 0, 1) * cdf(-h, 0, 1)) / 2, 12)
  })
})

describe('the chance of a part that rattles', () => {
  test('is the sum over what it loses', () => {
    const [mm, deviation, rattle] = [0.35, 0.08, 0.3]
    const steps = 40_000
    let sum = 0.5 * cdf(mm / deviation, 0, 1)
    for (let n = 0; n < steps; n++) {
      const z = (8 * (n + 0.5)) / steps
      const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)
      sum += (cdf((mm - rattle * z) / deviation, 0, 1) * density * 8) / steps
    }
    expect(chanceOfRattling(mm, deviation, rattle)).toBeCloseTo(sum, 8)
  })

  test('without scatter is that of the rattle alone, and without rattle that of the scatter', () => {
    expect(chanceOfRattling(0.6, 0, 0.4)).toBeCloseTo(cdf(1.5, 0, 1), 12)
    expect(chanceOfRattling(-0.01, 0, 0.4)).toBe(0)
    expect(chanceOfRattling(0.1, 0.05, 0)).toBeCloseTo(cdf(2, 0, 1), 12)
    expect(chanceOfRattling(0.1, 0.05, 1e-9)).toBeCloseTo(cdf(2, 0, 1), 6)
  })
})

describe('the chance that a needle is selected this time', () => {
  test('with loose pivots on a new machine is that of a push which loses no more than it has to spare', () => {
    for (const loose of [0.05, 0.4, 0.6])
      expect(chanceOfSelection(machine([0], [`pivots.loose=${loose}`]), 1)).toBeCloseTo(
        cdf(0.6 / loose, 0, 1),
        9,
      )
  })

  test.each([
    [0, 0.4],
    [0.5, 0.3],
    [0.8, 0.2],
  ])('at wear %d with pivots loose by %d mm is the share that machines tried out select', (wear, loose) => {
    const run = worn(wear, [faultOf(`pivots.loose=${loose}`)])
    const { share, error } = tried(run, 1, 150)
    expect(Math.abs(chanceOfSelection(run, 1) - share)).toBeLessThan(4 * error + 1e-3)
  })
})

test('the draws for sticky pins and loose pivots stay what they are', () => {
  const sticky = [1, 2, 3].map((pass) => uniformDraw(1, 'sticky', 4, pass).toFixed(6))
  const pivots = [24, 124, 223].map((index) => normalDraw(7, 'pivots', index, 2).toFixed(6))
  expect([sticky, pivots]).toMatchInlineSnapshot(`
    [
      [
        "0.820645",
        "0.448894",
        "0.909850",
      ],
      [
        "1.142910",
        "-1.202590",
        "-0.370810",
      ],
    ]
  `)
})
