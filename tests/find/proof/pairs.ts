import { expect, test } from 'vitest'
import { pairsFound, stripAndPinPairs } from '@/find/proof.ts'
import { testCard } from '@/find/test-card.ts'
import { stripOfColumn } from '@/mechanism/bed.ts'
import { toColumn } from '@/mechanism/indices.ts'

/** Proves the pairs of these strips' faults with every pin's. In several files, as they take a while. */
export const provePairs = (strips: readonly number[]): void =>
  test(`of strips ${strips.join(', ')} with every pin, both faults are found`, { timeout: 120_000 }, () => {
    const found = testCard()
    const pairs = stripAndPinPairs(found.dictionary).filter(([strip]) => strips.includes(strip.fault.at[0]!))
    // Seized, shifted, and slow by three amounts, with each of 24 pins low, high or over.
    expect(pairs).toHaveLength(strips.length * 5 * 72)
    const { tried, found: count, missed } = pairsFound(found, pairs)
    expect(tried).toBe(pairs.length)
    expect(count / tried).toBeGreaterThanOrEqual(0.9)
    // What a pin does is lost only on its own strip, where that is stuck or nearly so.
    for (const id of missed) {
      const [, pin, strip, state] = /^pin\.(\d+)\.\w+ \+ strip\.(\d+)\.(.+)$/.exec(id) ?? []
      expect(stripOfColumn(toColumn(Number(pin))), id).toBe(Number(strip))
      expect(['seized', 'over', 'slow=1000'], id).toContain(state)
    }
  })
