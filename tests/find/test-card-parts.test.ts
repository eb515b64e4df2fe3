import { describe, expect, it } from 'vitest'
import { computeTestCard, type Progress, type TestCard } from '@/find/test-card.ts'
import { cheapestParting } from '@/find/parting.ts'
import { hasHole } from '@/mechanism/card.ts'

describe('the search for a test card', () => {
  const searched = (): { steps: Progress[]; found: TestCard } => {
    const steps: Progress[] = []
    const search = computeTestCard(2)
    let step = search.next()
    for (; !step.done; step = search.next()) steps.push(step.value)
    return { steps, found: step.value }
  }

  it('counts its tries, keeps the best, and stops at the first card that lacks nothing', () => {
    const { steps, found } = searched()
    expect([found.classes.length, found.hidden.length]).toEqual([found.most, 0])
    expect(found.most - steps[0]!.most).toBe(3)
    expect(steps.map(({ tried }) => tried)).toEqual(steps.map((_, n) => n + 1))
    expect(steps.every(({ rows }) => rows === 3)).toBe(true)
    const lacking = steps.map(({ most, classes }) => most - classes)
    expect(lacking).toEqual([...lacking].sort((one, other) => other - one))
    expect(lacking.at(-1)).toBe(0)
    expect(steps.at(-1)!.most).toBe(steps[0]!.most)
  })

  it('gives each column of a strip a code that lies in no other’s, runs the card through, and once more where a fault shows too little', () => {
    const { found } = searched()
    const codes = Array.from({ length: 24 }, (_, n) =>
      found.card.map((row) => (hasHole(row, n + 1) ? 'o' : '.')).join(''),
    )
    expect(new Set(codes)).toEqual(new Set(['o..', '.o.', '..o']))
    for (let strip = 0; strip < 8; strip++)
      expect(new Set([codes[strip], codes[strip + 8], codes[strip + 16]]).size).toBe(3)

    expect(found.runs).toEqual([500, 1500, 100, 1500])
    const { views } = found.dictionary
    expect(views).toHaveLength(13)
    expect(views.slice(0, 12).map(({ pass }) => pass)).toEqual(Array.from({ length: 12 }, (_, n) => n + 1))
    expect(views.map(({ speed }) => speed)).toEqual(
      [500, 1500, 100, 1500].flatMap((speed) => [speed, speed, speed]).concat(500),
    )
    expect(views.at(-1)).toEqual({ card: null, pass: 1, speed: 500, shift: null })
    expect(views[4]!.shift).toBe(0)
  })
})

describe('the cheapest parting', () => {
  const means = (...list: readonly (readonly [number, ...number[]])[]) =>
    list.map(([cost, ...parts]) => ({ cost, parts: new Set(parts) }))

  it('takes what parts all at once where that is cheaper, and several where those are', () => {
    expect(cheapestParting(means([3, 1, 2], [1, 1], [1, 2]))).toEqual({
      taken: [1, 2],
      cost: 2,
      isProved: true,
    })
    expect(cheapestParting(means([1.5, 1, 2], [1, 1], [1, 2]))).toEqual({
      taken: [0],
      cost: 1.5,
      isProved: true,
    })
  })

  it('of equals takes the one named first', () => {
    expect(cheapestParting(means([1, 1], [1, 1])).taken).toEqual([0])
    expect(cheapestParting(means([2, 1], [1, 1])).taken).toEqual([1])
  })

  it('says that it is not proved where there is too much to try', () => {
    // Sets of three of 45 things, each as dear as the others: no bound cuts the search short.
    let state = 3
    const next = (): number => (state = (state * 1103515245 + 12345) % 2147483648)
    const many = Array.from({ length: 90 }, () => ({
      cost: 1 + (next() % 7) / 100,
      parts: new Set(Array.from({ length: 3 }, () => Math.floor(next() / 65536) % 45)),
    }))
    const { taken, cost, isProved } = cheapestParting(many)
    expect(isProved).toBe(false)
    expect(new Set(taken.flatMap((n) => [...many[n]!.parts]))).toEqual(
      new Set(many.flatMap(({ parts }) => [...parts])),
    )
    expect(cost).toBeCloseTo(
      taken.reduce((sum, n) => sum + many[n]!.cost, 0),
      9,
    )
  })
})
