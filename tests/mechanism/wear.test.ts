import { describe, expect, test } from 'vitest'
import { conditionOf } from '@/mechanism/condition.ts'
import { normalDraw, type Stream } from '@/mechanism/random.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { count, machine, selectedIn } from './make.ts'
import { columnAt } from './trade.ts'

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length
const deviation = (values: readonly number[]): number => {
  const middle = mean(values)
  return Math.sqrt(mean(values.map((value) => (value - middle) ** 2)))
}
const together = (one: readonly number[], other: readonly number[]): number => {
  const [middle, otherMiddle] = [mean(one), mean(other)]
  const products = one.map((value, n) => (value - middle) * (other[n]! - otherMiddle))
  return mean(products) / deviation(one) / deviation(other)
}

const seeds = count(1, 400)
const streams: readonly Stream[] = ['pin', 'lost', 'catch', 'butt', 'retainer']

describe('a draw', () => {
  // Of n draws the mean is out by 1/sqrt(n) and the deviation by 1/sqrt(2n): four of those are allowed.
  const draws = (stream: Stream, index = 3): number[] =>
    count(1, 20_000).map((seed) => normalDraw(seed, stream, index))

  test.each(streams)('of %s over many seeds is a standard normal one', (stream) => {
    const all = draws(stream)
    expect(Math.abs(mean(all))).toBeLessThan(4 / Math.sqrt(20_000))
    expect(Math.abs(deviation(all) - 1)).toBeLessThan(4 / Math.sqrt(40_000))
    // Φ(-1) = 0.158655, Φ(1.96) = 0.975002 (z tables).
    for (const [z, below] of [
      [-1, 0.158655],
      [0, 0.5],
      [1.96, 0.975002],
    ] as const)
      expect(Math.abs(all.filter((value) => value < z).length / 20_000 - below)).toBeLessThan(
        4 * Math.sqrt((below * (1 - below)) / 20_000),
      )
  })

  test('says nothing of the draw for another part, quantity, seed or pass', () => {
    const one = draws('pin')
    const shifted = count(2, 20_001).map((seed) => normalDraw(seed, 'pin', 3))
    const later = count(1, 20_000).map((seed) => normalDraw(seed, 'pin', 3, 1))
    for (const other of [draws('pin', 4), draws('lost'), draws('catch'), draws('butt'), shifted, later])
      expect(Math.abs(together(one, other))).toBeLessThan(4 / Math.sqrt(20_000))
  })

  test('is the same whenever it is asked for', () => {
    expect(normalDraw(7, 'butt', 12, 3)).toBe(normalDraw(7, 'butt', 12, 3))
  })
})

describe('wear', () => {
  test.each([0.2, 0.8, 1])(
    'moves the dimensions and widens their scatter as its table says, at %d',
    (wear) => {
      const all = seeds.map((seed) => conditionOf({ ...soundScenario(null), wear, seed }))
      const pins = all.flatMap(({ pinError }) => [...pinError])
      const lost = all.flatMap((one) => [...one.lost])
      const near = (values: readonly number[], middle: number, spread: number): void => {
        const n = values.length
        expect(Math.abs(mean(values) - middle)).toBeLessThan((4 * spread) / Math.sqrt(n))
        expect(Math.abs(deviation(values) - spread)).toBeLessThan((4 * spread) / Math.sqrt(2 * n))
      }
      near(pins, 0, 0.03 + 0.12 * wear)
      near(lost, 0.2 + 0.45 * wear, 0.02 + 0.08 * wear)
      near(
        all.flatMap(({ catchError }) => [...catchError]),
        0,
        0.02 + 0.05 * wear,
      )
      near(
        all.flatMap(({ buttError }) => [...buttError]),
        0,
        0.02 + 0.05 * wear,
      )
      expect(all[0]!.sweepEdge).toBeCloseTo(2.0 + 0.75 * wear, 12)
      expect(all[0]!.reach).toBeCloseTo(1.2 + 0.1 * wear, 12)
      expect(all[0]!.presser.right).toBeCloseTo(1.5 - 0.35 * wear, 12)
      expect(all[0]!.presser.left).toBeCloseTo(1.5 - 0.35 * wear, 12)
    },
  )

  test('near 0.8 lets a machine select some columns’ needles and not others’, the same in each pass one way', () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const run = machine([0xffffff], [], { wear: 0.8, seed })
      const selected = selectedIn(run, 1)
      const columns = new Set(selected.map((needle) => columnAt(needle)))
      expect(columns.size).toBeGreaterThan(0)
      expect(columns.size).toBeLessThan(24)
      expect(selectedIn(run, 3)).toEqual(selected)
    }
  })

  test('gives other machines for other seeds', () => {
    const patterns = [1, 2, 3, 4, 5].map((seed) =>
      selectedIn(machine([0xffffff], [], { wear: 0.8, seed }), 1).join(),
    )
    expect(new Set(patterns).size).toBe(5)
  })

  test('does nothing yet at 0.2', () => {
    for (const seed of seeds.slice(0, 50)) {
      expect(machine([0xa53c96], [], { wear: 0.2, seed }).passOf(1).departures).toEqual([])
      expect(machine([0xa53c96], [], { wear: 0.2, seed, speed: 2000 }).passOf(2).departures).toEqual([])
    }
  })
})

describe('a worn retainer bar', () => {
  // A free butt is missed where its time constant, log-normal around the median with σ 0.5, is over gateLag·pitch/speed
  // /ln(presser/gate1): 11.96 ms at 500 mm/s. Φ((ln(8) - ln(11.96))/0.5) = Φ(-0.8042) = 0.2106 (z tables, interpolated).
  test.each([
    [8, 500, 0.2106],
    [11.96, 500, 0.5],
    [12, 1000, 0.9182],
  ])('of %d ms at %i mm/s selects a share of %d of the needles without a hole', (worn, speed, share) => {
    const all = seeds.slice(0, 60).flatMap((seed) => {
      const run = machine([0], [`retainer.worn=${worn}`], { seed, speed })
      return [...run.passOf(1).came, ...run.passOf(2).came]
    })
    const found = all.filter((came) => came === 'selected').length / all.length
    expect(Math.abs(found - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / all.length) + 2e-4)
  })

  test('misses other needles in other passes and with other seeds, and leaves needles under holes alone', () => {
    const missed = (seed: number, pass: number): string =>
      selectedIn(machine([0], ['retainer.worn=12'], { seed }), pass).join()
    expect(new Set([missed(1, 1), missed(1, 2), missed(1, 3), missed(2, 1)]).size).toBe(4)
    expect(machine([0xffffff], ['retainer.worn=12']).passOf(1).departures).toEqual([])
  })
})
