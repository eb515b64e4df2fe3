import { describe, expect, test } from 'vitest'
import { planOf } from '@/find/plan.ts'
import {
  openingMinutes,
  type Opening,
  openingsOf,
  type RepairId,
  repairIds,
  repairOf,
} from '@/find/repairs.ts'
import { findingOf } from './finding-of.ts'

const nothing = findingOf([])

const orderOf = (ids: readonly RepairId[]): RepairId[] =>
  planOf(ids, nothing).steps.map(({ repair }) => repair)

/** How often something has to come off the machine in an order of work: what the next step does not need goes back on. */
const openingsIn = (order: readonly RepairId[]): number => {
  let off: readonly Opening[] = []
  return order.reduce((sum, id) => {
    const { opens } = repairOf(id)
    const more = opens.filter((opening) => !off.includes(opening)).length
    off = opens
    return sum + more
  }, 0)
}

/** Every order of some things. */
const ordersOf = <T>(things: readonly T[]): T[][] =>
  things.length === 0
    ? [[]]
    : things.flatMap((first, n) =>
        ordersOf([...things.slice(0, n), ...things.slice(n + 1)]).map((rest) => [first, ...rest]),
      )

/** Every choice of so many things, in their order. */
const choicesOf = <T>(things: readonly T[], count: number): T[][] =>
  count === 0
    ? [[]]
    : things.flatMap((first, n) => choicesOf(things.slice(n + 1), count - 1).map((rest) => [first, ...rest]))

const depthOf = (id: RepairId): number => ['nothing', 'one-cover', 'covers', 'reader'].indexOf(opened(id))
const opened = (id: RepairId): string => {
  const { opens } = repairOf(id)
  return opens.includes('reader')
    ? 'reader'
    : opens.includes('covers')
      ? 'covers'
      : opens.includes('cover')
        ? 'one-cover'
        : 'nothing'
}

describe('the order of work', () => {
  test.each([1, 2, 3, 4, 5])('of %d ways has the fewest openings of all orders', (count) => {
    let worse = 0
    for (const ids of choicesOf(repairIds, count)) {
      const own = openingsIn(orderOf(ids.toReversed()))
      const all = ordersOf(ids).map(openingsIn)
      expect(own, ids.join()).toBe(Math.min(...all))
      if (Math.max(...all) > own) worse++
    }
    // With three ways one may come between two that need the same.
    expect(worse > 0).toBe(count > 2)
  })

  test('of all ways opens each thing once', () => {
    expect(openingsIn(orderOf(repairIds))).toBe(openingsOf(repairIds).length)
    expect(openingsIn(['strips', 'needles', 'catches'])).toBe(4)
  })

  test('goes from outside inwards, the card reader last', () => {
    const order = orderOf(repairIds.toReversed())
    const depths = order.map(depthOf)
    expect(depths).toEqual([...depths].sort((one, other) => one - other))
    expect(order.at(-1)).toBe('reader')
    expect(order).toHaveLength(repairIds.length)
  })

  test('names what comes off when it does', () => {
    const { steps, minutes } = planOf(['reader', 'needles', 'catches', 'retainer', 'strips'], nothing)
    expect(steps.map(({ repair, opens }) => [repair, opens])).toEqual([
      ['retainer', ['bar']],
      ['needles', []],
      ['strips', ['cover']],
      ['catches', ['covers']],
      ['reader', ['reader']],
    ])
    const off = openingMinutes.bar + openingMinutes.cover + openingMinutes.covers + openingMinutes.reader
    expect(minutes).toBe(steps.reduce((sum, step) => sum + step.minutes, off))
  })

  test('has a way that is ticked twice once, and nothing where nothing is ticked', () => {
    expect(orderOf(['belt', 'belt'])).toEqual(['belt'])
    expect(planOf([], nothing)).toEqual({ steps: [], minutes: 0, parts: [], tools: [] })
  })
})

describe('the cautions of a plan', () => {
  test('are at the first step that needs them, and only there', () => {
    const { steps } = planOf(repairIds, nothing)
    const seen = new Map<string, RepairId>()
    for (const { repair, cautions } of steps)
      for (const caution of cautions) {
        expect(seen.has(caution), caution).toBe(false)
        seen.set(caution, repair)
      }
    for (const id of repairIds)
      for (const caution of repairOf(id).cautions) {
        const first = repairIds.find((one) => repairOf(one).cautions.includes(caution))
        expect(seen.get(caution), caution).toBe(first)
      }
    expect(seen.get('hooks')).toBe('retainer')
    expect(seen.get('unplug')).toBe('belt')
    expect(seen.get('solvents')).toBe('strips')
    expect(seen.get('reader')).toBe('reader')
  })
})

describe('the places of a plan', () => {
  const finding = findingOf([
    { place: 'strip.3', ways: [{ causes: ['strip.3.seized'], probability: 0.98 }] },
    { place: 'strip.5', ways: [{ causes: ['strip.5.slow=300'], probability: 0.4 }] },
    { place: 'strip.6', ways: [{ causes: ['strip.6.slow=300'], probability: 0.05 }] },
    { place: 'needle.R1', ways: [{ causes: ['needle.R1.stiff'], probability: 0.3 }] },
    { place: 'column.2', ways: [{ causes: ['pin.2.low', 'rocker.2.dead'], probability: 0.35 }] },
    { place: 'belt', ways: [{ causes: ['belt.timing=3'], probability: 0.2 }] },
  ])

  test('are those likely wrong; what may be wrong besides is for a look while the machine is open', () => {
    const [step, ...none] = planOf(['strips'], finding).steps
    expect(none).toEqual([])
    expect(step).toMatchObject({ repair: 'strips', places: ['strip.3'] })
    expect(step!.also).toEqual([{ repair: 'strips', place: 'strip.5', chance: 0.4 }])
  })

  test('are those in doubt where none is likely wrong', () => {
    const { steps } = planOf(['needles', 'belt', 'reader', 'catches'], finding)
    expect(steps.map(({ repair, places }) => [repair, places])).toEqual([
      ['needles', ['needle.R1']],
      ['belt', ['belt']],
      ['catches', []],
      ['reader', ['column.2']],
    ])
  })

  test('are named for a look once, at the first step that reaches them', () => {
    const { steps } = planOf(['retainer', 'catches', 'reader'], finding)
    expect(steps.map(({ also }) => also.map(({ place }) => place))).toEqual([['needle.R1'], ['strip.5'], []])
  })

  test('from outside reach nothing else', () => {
    for (const { also } of planOf(['settings', 'card', 'belt'], finding).steps) expect(also).toEqual([])
  })

  test('ask for parts and tools, each tool once', () => {
    const { parts, tools } = planOf(['needles', 'strips', 'reader'], finding)
    expect(parts).toContainEqual({ part: 'needle', count: 1, isSure: true })
    expect(tools).toEqual([...new Set(tools)])
    for (const id of ['needles', 'strips', 'reader'] as const)
      for (const tool of repairOf(id).tools) expect(tools).toContain(tool)
    expect(tools).not.toContain('punch')
  })
})
